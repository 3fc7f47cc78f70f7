// Which file of the handbook an address asks for. Pages are known by list, never guessed.

export type Route =
  | { kind: "file"; path: string } // answer with this file
  | { kind: "move"; path: string } // its relative links need the real address first
  | { kind: "other" }; // not ours

/** path is relative to the root of the site, without query and hash. */
export function route(path: string, files: ReadonlySet<string>, navigation: boolean): Route {
  if (path !== "" && files.has(path)) return { kind: "file", path };
  if (!navigation) return { kind: "other" };
  if (path === "" || path.endsWith("/")) {
    const bare = path.replace(/\/+$/, "");
    if (files.has(path + "index.html")) return { kind: "file", path: path + "index.html" };
    if (files.has(bare)) return { kind: "move", path: bare };
    if (files.has(bare + ".html")) return { kind: "move", path: bare + ".html" };
    return { kind: "other" };
  }
  if (files.has(path + ".html")) return { kind: "file", path: path + ".html" };
  if (files.has(path + "/index.html")) return { kind: "move", path: path + "/" };
  return { kind: "other" };
}

const types: Record<string, string> = {
  html: "text/html; charset=utf-8",
  css: "text/css; charset=utf-8",
  js: "text/javascript; charset=utf-8",
  json: "application/json; charset=utf-8",
  webmanifest: "application/manifest+json; charset=utf-8",
  wasm: "application/wasm",
  svg: "image/svg+xml",
  png: "image/png",
  txt: "text/plain; charset=utf-8",
  csv: "text/csv; charset=utf-8",
  woff2: "font/woff2",
};

/** The type by the file's name: a server that mislabels a file is put right here. */
export function contentType(path: string): string {
  return types[path.slice(path.lastIndexOf(".") + 1)] ?? "application/octet-stream";
}
