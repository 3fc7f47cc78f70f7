// The data file of the cause model, from the server or out of the single file.

import { root } from "../../module/root.ts";

/** The text of the data. address: from the site's root; "" without a model. */
export async function causeData(address: string): Promise<string> {
  const inside = document.getElementById("co-causes");
  if (inside) return inside.textContent ?? "";
  if (address === "") return "";
  const response = await fetch(root(address));
  if (!response.ok) throw new Error(`The server answered ${response.status} for the causes.`);
  return response.text();
}

/** The findings in words, by id. */
export function findingNames(data: string): Map<string, string> {
  return new Map(data.split("\n").map((l) => l.split("\t")).filter(([kind]) => kind === "finding").map(([, id = "", name = ""]) => [id, name]));
}
