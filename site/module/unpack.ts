// Unpacks what the single file holds gzipped and in base64.

export async function unpack(base64: string): Promise<ArrayBuffer> {
  if (typeof DecompressionStream === "undefined") throw new Error("This browser is too old to unpack the calculator.");
  const text = atob(base64.trim());
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(stream).arrayBuffer();
}
