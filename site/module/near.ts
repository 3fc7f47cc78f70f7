// What a long page does only when somebody comes near: a screen ahead, either way. On paper everything is near.

const waiting = new Map<Element, (() => void)[]>();

const watch = "IntersectionObserver" in window
  ? new IntersectionObserver((entries) => {
    for (const e of entries) if (e.isIntersecting) begin(e.target);
  }, { rootMargin: "100% 0px" })
  : null;

addEventListener("beforeprint", beginAll);

/** Calls now what waits on the page that is shown: a page of the single file that is hidden is not printed. */
export function beginAll(): void {
  for (const at of [...waiting.keys()]) if (at.getClientRects().length > 0) begin(at);
}

/** Calls start once the element is near. */
export function near(at: Element, start: () => void): void {
  waiting.set(at, [...(waiting.get(at) ?? []), start]);
  if (watch) watch.observe(at);
  else begin(at);
}

/** Calls now what waits for the element to come near. */
export function begin(at: Element): void {
  const starts = waiting.get(at) ?? [];
  waiting.delete(at);
  watch?.unobserve(at);
  for (const start of starts) {
    try {
      start();
    } catch (error) {
      console.error(error);
    }
  }
}

// As in prose.css: where what is far away is not laid out.
const farIsSkipped = typeof CSS !== "undefined" && CSS.supports("overflow-anchor: auto") && CSS.supports("content-visibility: auto");

/**
 * Takes a control out of its step until the step comes near. A browser that fills in forms looks at every control of a
 * page as soon as it is loaded, and lays out what is around each: on a page of a hundred steps that holds up the first tap.
 */
export function setAside(step: Element, control: Element): void {
  if (!farIsSkipped || !watch) return;
  const place = document.createComment("");
  control.replaceWith(place);
  near(step, () => place.replaceWith(control));
}
