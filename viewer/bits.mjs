// Sets of small integers as bytes: bit i of byte i >> 3, least significant first.

/** @param {number} size @returns {Uint8Array} */
export const makeBits = size => new Uint8Array((size + 7) >> 3);

/** @param {Uint8Array} bits @param {number} i */
export const setBit = (bits, i) => { bits[i >> 3] |= 1 << (i & 7); };

/** @param {Uint8Array} bits @param {number} i @returns {boolean} */
export const hasBit = (bits, i) => (bits[i >> 3] >> (i & 7) & 1) === 1;

/** @param {Uint8Array} bits @returns {number} */
export function countBits(bits) {
  let count = 0;
  for (let byte of bits) for (; byte; byte &= byte - 1) count++;
  return count;
}

const HEX = Array.from({ length: 256 }, (_, i) => i.toString(16).padStart(2, '0'));

/** @param {Uint8Array} bits @returns {string} */
export function toHex(bits) {
  let text = '';
  for (const byte of bits) text += HEX[byte];
  return text;
}
