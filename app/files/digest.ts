/** A short mark of a text: two texts with the same mark are the same. */

/** SHA-256 (FIPS 180-4) in hexadecimal; null where the page is not served securely, as files cannot be written there. */
export async function digestOf(text: string): Promise<string | null> {
  if (globalThis.crypto?.subtle === undefined) return null;
  const bytes = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  return [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
