// Makes a photo small enough for the phone's storage: at most 1600 pixels on the long side and about 300 KB. Drawing it
// anew also drops what the camera wrote into the file, such as the place.

export const longest = 1600;
export const enough = 300_000; // bytes

export interface Small { blob: Blob; width: number; height: number }

/** The size that fits, never larger than the picture. */
export function fit(width: number, height: number, side: number): { width: number; height: number } {
  const scale = Math.min(1, side / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

export async function shrink(file: Blob, name = "this file"): Promise<Small> {
  const picture = await open(file, name);
  // First less detail, then fewer pixels: a rating plate stays readable longest that way.
  for (const side of [longest, 1280, 1024, 800]) {
    const size = fit(picture.naturalWidth, picture.naturalHeight, side);
    const canvas = document.createElement("canvas");
    Object.assign(canvas, size);
    const pen = canvas.getContext("2d");
    if (!pen) break;
    pen.fillStyle = "#fff"; // JPEG knows no transparency
    pen.fillRect(0, 0, size.width, size.height);
    pen.drawImage(picture, 0, 0, size.width, size.height);
    for (const quality of [0.85, 0.75, 0.65, 0.55]) {
      const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", quality));
      if (!blob || blob.type !== "image/jpeg") throw new Error("This browser cannot make a small copy of the picture. It was not kept.");
      if (blob.size <= enough || (side === 800 && quality === 0.55)) return { blob, ...size };
    }
  }
  throw new Error("This browser cannot draw the picture. It was not kept.");
}

/** As a data address: the pages' policy allows no other for pictures. An <img> also turns the picture upright. */
async function open(file: Blob, name: string): Promise<HTMLImageElement> {
  const img = new Image();
  img.src = await dataAddress(file);
  try {
    await img.decode();
    if (img.naturalWidth > 0) return img;
  } catch {
    // Said below.
  }
  throw new Error(`This browser cannot read ${name}${file.type ? ` (${file.type})` : ""} as a picture. Take or choose a JPEG or PNG picture.`);
}

export function dataAddress(blob: Blob): Promise<string> {
  return new Promise((done, failed) => {
    const reader = new FileReader();
    reader.onload = () => done(String(reader.result));
    reader.onerror = () => failed(new Error("This file cannot be read. Was it moved or deleted?"));
    reader.readAsDataURL(blob);
  });
}
