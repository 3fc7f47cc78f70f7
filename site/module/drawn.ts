/** Kept once the browser has drawn the next picture; a page in the background draws none, so a moment counts too. */
export function drawn(): Promise<void> {
  return new Promise((done) => {
    const late = setTimeout(done, 100);
    requestAnimationFrame(() => setTimeout(() => {
      clearTimeout(late);
      done();
    }));
  });
}
