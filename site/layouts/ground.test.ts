// Every pair of text and ground in both themes has a contrast of 7 to 1 or more (WCAG 2.2, 1.4.6, formula of relative luminance).
import { strict as assert } from "node:assert";
import { test } from "node:test";
import { readFileSync } from "node:fs";

const css = readFileSync(new URL("../../../../layouts/ground.css", import.meta.url), "utf8");

function colours(block: string): Map<string, string> {
  return new Map(Array.from(block.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g), (m) => [m[1] ?? "", m[2] ?? ""]));
}
function block(selector: string): Map<string, string> {
  const at = css.indexOf(selector + " {");
  assert.ok(at >= 0, selector);
  return colours(css.slice(at, css.indexOf("}", at)));
}
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => {
    const v = parseInt(hex.slice(i, i + 2), 16) / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a: string, b: string): number {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
}

const pairs: [string, string][] = [
  ["ink", "paper"], ["ink", "sheet"], ["ink", "tint"], ["ink-soft", "paper"], ["ink-soft", "sheet"], ["ink-soft", "tint"],
  ["accent", "paper"], ["accent", "sheet"], ["accent", "tint"], ["accent-ink", "accent"],
  ["danger-ink", "danger"], ["warning-ink", "warning"], ["caution-ink", "caution"], ["notice-ink", "notice"],
];
const light = block(":root");
const themes: [string, Map<string, string>][] = [
  ["light", light],
  ["dark by choice", new Map([...light, ...block(':root[data-theme="dark"]')])],
  ["dark by the phone", new Map([...light, ...block(':root:not([data-theme="light"])')])],
];

test("the formula gives 21 for black on white", () => assert.equal(contrast("#000000", "#ffffff"), 21));
for (const [name, theme] of themes) {
  for (const [text, ground] of pairs) {
    test(`${name}: ${text} on ${ground}`, () => {
      const a = theme.get(text);
      const b = theme.get(ground);
      assert.ok(a && b, "both colours are declared");
      const got = contrast(a, b);
      assert.ok(got >= 7, `got ${got.toFixed(2)}, want at least 7 (${a} on ${b})`);
    });
  }
}
for (const [name, theme] of themes) {
  for (const ground of ["paper", "sheet", "tint"]) {
    // Edges of fields and boxes: WCAG 2.2, 1.4.11, asks for 3 to 1; sun and rain for more.
    test(`${name}: line on ${ground}`, () => assert.ok(contrast(theme.get("line") ?? "", theme.get(ground) ?? "") >= 4.5));
  }
}
test("both dark themes are one", () => assert.deepEqual([...block(':root[data-theme="dark"]')], [...block(':root:not([data-theme="light"])')]));
