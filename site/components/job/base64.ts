// Bytes as base64 text and back.

export function toBase64(bytes: ArrayBuffer): string {
  const list = new Uint8Array(bytes);
  let text = "";
  for (let i = 0; i < list.length; i += 0x8000) text += String.fromCharCode(...list.subarray(i, i + 0x8000));
  return btoa(text);
}

export function fromBase64(text: string): ArrayBuffer {
  const raw = atob(text);
  const bytes = new Uint8Array(raw.length);
  for (let i = 0; i < raw.length; i++) bytes[i] = raw.charCodeAt(i);
  return bytes.buffer;
}
