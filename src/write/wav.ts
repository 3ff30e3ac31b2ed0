/**
 * Sound as a WAVE file: PCM, 16 bits, one channel. RIFF, little-endian: a `fmt ` chunk of 16 bytes and a `data` chunk, 44 bytes of
 * header in all. Source: the RIFF / WAVE format as published for multimedia files (1991). The same samples give the same bytes.
 */

/** Media type and file ending. */
export const wavType = { extension: '.wav', media: 'audio/wav' } as const;

const headerBytes = 44;

/**
 * @param samples -1 to 1; what lies beyond is held at the end of the scale
 * @param rate samples a second, a whole number
 * @throws on a sample that is not a number, or on a file that would not fit the 4 bytes of its length
 */
export function writeWav(samples: ArrayLike<number>, rate: number): Uint8Array {
  const dataBytes = 2 * samples.length;
  if (dataBytes + headerBytes > 0xffffffff) throw new Error(`${samples.length} samples do not fit a WAVE file.`);
  if (!Number.isInteger(rate) || rate < 1) throw new Error(`A sample rate is a whole number, not ${rate}.`);
  const bytes = new Uint8Array(headerBytes + dataBytes);
  const view = new DataView(bytes.buffer);
  const tag = (at: number, text: string) => {
    for (let i = 0; i < 4; i++) bytes[at + i] = text.charCodeAt(i);
  };
  tag(0, 'RIFF');
  view.setUint32(4, headerBytes - 8 + dataBytes, true);
  tag(8, 'WAVE');
  tag(12, 'fmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true); // PCM
  view.setUint16(22, 1, true); // one channel
  view.setUint32(24, rate, true);
  view.setUint32(28, 2 * rate, true); // bytes a second
  view.setUint16(32, 2, true); // bytes a sample
  view.setUint16(34, 16, true); // bits a sample
  tag(36, 'data');
  view.setUint32(40, dataBytes, true);
  for (let i = 0; i < samples.length; i++) {
    const value = samples[i] as number;
    if (!Number.isFinite(value)) throw new Error(`Sample ${i} is not a number: ${value}.`);
    view.setInt16(headerBytes + 2 * i, Math.round(32767 * Math.min(1, Math.max(-1, value))), true);
  }
  return bytes;
}
