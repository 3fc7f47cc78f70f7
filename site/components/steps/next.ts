/**
 * The step to go on with: the first that is open below where the person stands; when there is none, the first that is open
 * above. reached holds the rows that stand at the top of the screen or further up.
 */
export function nextOpen<R, S extends { row: R; box: { checked: boolean } }>(steps: S[], reached: Set<R>): S | undefined {
  const open = steps.filter((s) => !s.box.checked);
  return open.find((s) => !reached.has(s.row)) ?? open[0];
}
