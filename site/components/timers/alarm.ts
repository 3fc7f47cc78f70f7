// What a page may do to be noticed: sound, vibration, the title of its tab, and keeping the screen on. Each depends on
// the browser's leave; what it refuses is said on the page by timers.ts.

let sound: AudioContext | null = null;
let refused = false; // by the last tap
let quietSince = 0; // by performance.now()

/** Browsers let a page sound only after a tap, and a call or a lock takes the sound away: each tap while a timer runs asks anew. */
export function prepareSound(): void {
  try {
    if (!sound) {
      sound = new AudioContext();
      sound.onstatechange = wakeSound;
    }
    const asked = sound;
    wakeSound()?.catch(() => {
      refused = true;
      if (sound === asked) sound = null; // it may never come back: the next tap makes another
    });
  } catch {
    refused = true;
  }
}

/** Asks for a sound that a tap has brought before; a browser may give it back without another. */
export function wakeSound(): Promise<void> | undefined {
  const asked = sound && sound.state !== "running" ? sound.resume() : undefined;
  asked?.catch(() => undefined);
  return asked;
}

/** Says why no sound can be made while one is wanted, or "". The sound needs a moment after a tap: only a silence that lasts is told. */
export function silence(wanted: boolean): string {
  const now = performance.now();
  if (!wanted || sound?.state === "running") {
    quietSince = 0;
    refused = false;
    return "";
  }
  quietSince ||= now;
  if (now - quietSince < 900) return "";
  return refused ? "The browser gives no sound. Tap to ask again." : "No sound until you tap this page.";
}

export function ring(): void {
  try {
    // Before the first tap on a page browsers refuse, and write a line to the console each time.
    if (navigator.userActivation?.hasBeenActive ?? true) navigator.vibrate?.([500, 250, 500, 250, 800]);
  } catch {
    // Refused: the words on the page stay.
  }
  void wakeSound();
  if (sound?.state !== "running") return;
  for (let i = 0; i < 3; i++) {
    const at = sound.currentTime + i * 0.7;
    const tone = sound.createOscillator();
    const loud = sound.createGain();
    tone.type = "square";
    tone.frequency.value = i === 2 ? 1175 : 880;
    loud.gain.setValueAtTime(0.0001, at);
    loud.gain.exponentialRampToValueAtTime(0.4, at + 0.03);
    loud.gain.setValueAtTime(0.4, at + 0.4);
    loud.gain.exponentialRampToValueAtTime(0.0001, at + 0.5);
    tone.connect(loud).connect(sound.destination);
    tone.start(at);
    tone.stop(at + 0.55);
  }
}

let title = ""; // the page's own
let shown = "";

/** The tab's title changes with each call while text is given, and returns when it is null. The page's own follows, so that tabs can be told apart. */
export function flashTitle(text: string | null): void {
  if (document.title !== shown) title = document.title; // another page of the single file
  shown = text === null || shown !== title ? title : `${text} · ${title}`;
  if (document.title !== shown) document.title = shown;
  shown = document.title; // with the white space as the browser keeps it
}

let lock: WakeLockSentinel | null = null;
let asked = false;

/** Keeps the screen on while wanted. Calls told with whether the screen stays on. */
export async function keepScreenOn(wanted: boolean, told: (on: boolean) => void): Promise<void> {
  if (!wanted) {
    asked = false;
    const held = lock;
    lock = null;
    await held?.release().catch(() => undefined);
    return;
  }
  if (lock && !lock.released) return told(true);
  if (document.visibilityState !== "visible") asked = false; // asked anew when the page is seen again
  if (asked || document.visibilityState !== "visible") return;
  asked = true;
  try {
    if (!navigator.wakeLock) throw new Error("no wake lock");
    lock = await navigator.wakeLock.request("screen");
    lock.addEventListener("release", () => (asked = false));
    told(true);
  } catch {
    told(false);
  }
}
