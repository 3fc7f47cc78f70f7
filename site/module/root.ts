// Where the site's root is, seen from this page. Pages know it from their build; nothing depends on the server's path.

const html = document.documentElement;

export const singleFile = "singleFile" in html.dataset;

/** Turns an address relative to the site's root into one that works from this page. */
export function root(address: string): string {
  if (singleFile) return address;
  return new URL((html.dataset.base ?? "./") + address, location.href).href;
}

/** The pages in this document: one on the site, all of them in the single file. */
export function pages(): HTMLElement[] {
  return Array.from(document.querySelectorAll<HTMLElement>("[data-page]"));
}

/** Address of a page by its id, to link to from any other. */
export function pageAddress(id: string): string {
  return singleFile ? "#" + id : root(id + ".html");
}
