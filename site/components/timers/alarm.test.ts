import { strict as assert } from "node:assert";
import { test } from "node:test";
import { prepareSound, ring, silence, wakeSound } from "./alarm.ts";

let clock = 1000;
let tones = 0;
let shakes = 0;
let gives: "running" | "refused" | "pending" = "running"; // what the browser does when it is asked for the sound
let made: Sound[] = [];

const param = { value: 0, setValueAtTime: () => undefined, exponentialRampToValueAtTime: () => undefined };
const node = { connect: (to: unknown) => to, frequency: param, gain: param, start: () => tones++, stop: () => undefined };

class Sound {
  state = "suspended";
  currentTime = 0;
  destination = node;
  onstatechange: (() => void) | null = null;
  constructor() {
    made.push(this);
  }
  createOscillator = (): unknown => ({ ...node });
  createGain = (): unknown => ({ ...node });
  async resume(): Promise<void> {
    if (gives === "refused") throw new Error("refused");
    if (gives === "pending") return new Promise(() => undefined);
    this.becomes("running");
  }
  becomes(state: string): void {
    this.state = state;
    this.onstatechange?.();
  }
}

const browser = globalThis as { AudioContext?: unknown };
browser.AudioContext = Sound;
Object.defineProperty(globalThis, "navigator", { configurable: true, value: { vibrate: () => shakes++, userActivation: { hasBeenActive: true } } });
Object.defineProperty(performance, "now", { value: () => clock });

const settle = (): Promise<void> => new Promise((done) => setTimeout(done));
/** What is said a second later, as the page ticks. */
const later = async (): Promise<string> => {
  await settle();
  silence(true);
  clock += 1000;
  return silence(true);
};
const untilTap = "No sound until you tap this page.";
const none = "The browser gives no sound. Tap to ask again.";

test("no sound before a tap, and the page says so", async () => {
  await wakeSound();
  assert.equal(made.length, 0, "a browser complains of a sound that is made before a tap");
  assert.equal(silence(true), "", "not at once: a tap needs a moment");
  assert.equal(await later(), untilTap);
  assert.equal(silence(false), "", "nothing is to sound");
  ring();
  assert.deepEqual([tones, shakes], [0, 1], "it shakes all the same");
});

test("a tap brings the sound", async () => {
  prepareSound();
  assert.equal(await later(), "");
  ring();
  assert.deepEqual([tones, shakes], [3, 2]);
});

test("a sound that is taken away is asked for at once, when the page is seen again, and by each tap", async () => {
  for (const state of ["interrupted", "suspended"]) {
    made[0]?.becomes(state);
    assert.equal(await later(), "", `${state}: given back at once`);
    for (const ask of [wakeSound, prepareSound, ring]) {
      gives = "pending";
      made[0]?.becomes(state);
      assert.equal(await later(), untilTap, state);
      const before = tones;
      ring();
      assert.equal(tones, before, "tones for later would all come at once");
      gives = "running";
      void ask();
      assert.equal(await later(), "", `${state}, ${ask.name}`);
    }
  }
  assert.equal(made.length, 1);
});

test("a refusal is said, and the next tap asks anew", async () => {
  gives = "refused";
  made[0]?.becomes("interrupted");
  await wakeSound()?.catch(() => undefined);
  assert.equal(await later(), untilTap, "refused without a tap: a tap may help");
  prepareSound();
  assert.equal(await later(), none);
  gives = "running";
  prepareSound();
  assert.equal(await later(), "");
  assert.equal(made.length, 2);
});

test("a browser without sound or vibration", async () => {
  gives = "refused";
  made[1]?.becomes("interrupted");
  prepareSound(); // refused: the next tap makes another
  await settle();
  delete browser.AudioContext;
  Object.defineProperty(globalThis, "navigator", { configurable: true, value: {} });
  prepareSound();
  assert.equal(await later(), none);
  const before = [tones, shakes];
  ring();
  assert.deepEqual([tones, shakes], before);
});

test("before the first tap on a page nothing shakes", () => {
  const before = shakes;
  Object.defineProperty(globalThis, "navigator", { configurable: true, value: { vibrate: () => shakes++, userActivation: { hasBeenActive: false } } });
  ring();
  assert.equal(shakes, before);
});
