/** SHA-256 of a file's bytes, by what every browser and Node carry (FIPS 180-4). */

/** 64 small hexadecimal digits. */
export async function sha256(bytes: Uint8Array): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new Uint8Array(bytes));
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
