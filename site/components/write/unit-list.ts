/** The units of a list as the page writes it ("bar gauge,kPa gauge,*psi gauge"), and the one to begin with in a system. */
export function unitsOf(list: string, system: string): { units: string[]; first: string } {
  const marked = list.split(",");
  const name = (u: string): string => u.replace(/^[+*]/, "");
  return { units: marked.map(name), first: name(marked.find((u) => u.startsWith(system === "ip" ? "*" : "+")) ?? marked[0] ?? "") };
}
