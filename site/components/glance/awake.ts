// Keeps the screen on, where the browser allows it, until the function returned is called. A browser gives the screen back
// when its page is hidden, so it is asked again when the page is seen again.

export function awake(): () => void {
  let lock: WakeLockSentinel | null = null;
  let over = false;
  const ask = (): void => {
    if (over || (lock && !lock.released) || document.visibilityState !== "visible" || !navigator.wakeLock) return;
    navigator.wakeLock.request("screen").then((held) => {
      if (over) void held.release().catch(() => undefined);
      else lock = held;
    }, () => undefined); // refused, as with a low battery: the screen sleeps as it always does
  };
  document.addEventListener("visibilitychange", ask);
  ask();
  return () => {
    over = true;
    document.removeEventListener("visibilitychange", ask);
    void lock?.release().catch(() => undefined);
  };
}
