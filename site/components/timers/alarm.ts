// What a page may do to be noticed: sound, vibration, the title of its tab, and keeping the screen on. Each depends on
// the browser's leave; what it refuses is said on the page by timers.ts.

let sound: AudioContext | null = null;

/** Browsers let a page sound only after a tap, so the tap that starts a timer prepares it. */
export function prepareSound(): void {
  try {
    sound ??= new AudioContext();
    if (sound.state === "suspended") void sound.resume();
  } catch {
    sound = null;
  }
}

export function ring(): void {
  try {
    // Before the first tap on a page browsers refuse, and write a line to the console each time.
    if (navigator.userActivation?.hasBeenActive ?? true) navigator.vibrate?.([500, 250, 500, 250, 800]);
  } catch {
    // Refused: the words on the page stay.
  }
  if (!sound || sound.state !== "running") return;
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
