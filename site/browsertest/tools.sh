#!/usr/bin/env bash
# Installs the browsers and what drives them, from Debian's packages. A browser
# that cannot be had is a failure, here and in CI: the tests never skip one.
set -euo pipefail

declare -A packages=(
	[chromium]=/usr/bin/chromium
	[firefox-esr]=/usr/bin/firefox-esr
	[webkit2gtk-driver]=/usr/bin/WebKitWebDriver
	[xvfb]=/usr/bin/Xvfb
	[xauth]=/usr/bin/xauth
	[fonts-dejavu-core]=/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf
)
missing=()
for p in "${!packages[@]}"; do [ -e "${packages[$p]}" ] || missing+=("$p"); done
[ ${#missing[@]} -eq 0 ] && exit 0
echo "installing ${missing[*]}"
if ! command -v apt-get >/dev/null || [ "$(id -u)" != 0 ]; then
	echo "cannot install ${missing[*]}: that needs apt-get and root" >&2
	exit 1
fi
export DEBIAN_FRONTEND=noninteractive
apt-get update -qq </dev/null
apt-get install -y -qq --no-install-recommends "${missing[@]}" </dev/null >/dev/null
