// The three files that leave the phone, and how: the share sheet where there is one that takes files, else downloads.

import { make } from "../../module/dom.ts";

export interface OneFile { name: string; type: string; text: string }

/** "invented-harbour-house" for a file name. */
export function slug(title: string): string {
  return title.toLowerCase().normalize("NFKD").replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "").slice(0, 40) || "job";
}

export function download(file: OneFile): void {
  const url = URL.createObjectURL(new Blob([file.text], { type: file.type }));
  const link = make("a", { href: url, download: file.name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** The largest part of the files that the share sheet takes, as they come: all, or those before the last; null for none. */
export function shareable(files: OneFile[]): OneFile[] | null {
  for (let n = files.length; n > 0; n--) {
    try {
      if (navigator.canShare?.({ files: asFiles(files.slice(0, n)) })) return files.slice(0, n);
    } catch {
      // An older browser throws at files.
    }
  }
  return null;
}

/** Opens the share sheet. True when something was sent, false when the person thought better of it. */
export async function share(title: string, files: OneFile[]): Promise<boolean> {
  try {
    await navigator.share({ title, files: asFiles(files) });
    return true;
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") return false;
    throw error;
  }
}

const asFiles = (files: OneFile[]): File[] => files.map((f) => new File([f.text], f.name, { type: f.type }));
