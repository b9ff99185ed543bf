// Makes a screenshot small enough to ship: its colours are brought together to a palette, which a picture of text does not show. It reads
// and writes PNG as its standard says (PNG specification, third edition, clauses 7, 9 and 11), for the one kind that a browser makes.
import assert from "node:assert/strict";
import { crc32, deflateSync, inflateSync } from "node:zlib";

const SIGNATURE = Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]);

/** @param {Buffer} png 8 bits a channel, colour with or without alpha, not interlaced; alpha is left out */
export function smallPicture(png) {
  const { width, height, channels, pixels } = decoded(png);
  const palette = new Map();
  // the most finely graded colours that a palette has room for
  for (const bits of [6, 5, 4, 3]) {
    palette.clear();
    const step = 1 << (8 - bits);
    const coarse = (value) =>
      Math.min(255, Math.round((Math.round(value / step) * step * 255) / 256));
    const indexed = Buffer.alloc((width + 1) * height);
    for (let at = 0, to = 0; to < indexed.length; to++) {
      if (to % (width + 1) === 0) continue; // each row begins with its filter: none
      const colour =
        (coarse(pixels[at]) << 16) |
        (coarse(pixels[at + 1]) << 8) |
        coarse(pixels[at + 2]);
      at += channels;
      if (!palette.has(colour)) palette.set(colour, palette.size);
      indexed[to] = palette.get(colour);
    }
    if (palette.size <= 256) return encoded(width, height, palette, indexed);
  }
  throw new Error("the picture has too many colours for a palette");
}

function decoded(png) {
  assert.ok(png.subarray(0, 8).equals(SIGNATURE), "it is a PNG");
  const data = [];
  let header;
  for (let at = 8; at < png.length;) {
    const length = png.readUInt32BE(at);
    const type = png.toString("latin1", at + 4, at + 8);
    const body = png.subarray(at + 8, at + 8 + length);
    if (type === "IHDR") header = body;
    if (type === "IDAT") data.push(body);
    at += length + 12;
  }
  const [width, height] = [header.readUInt32BE(0), header.readUInt32BE(4)];
  const [depth, colour, , , interlaced] = header.subarray(8);
  assert.ok(depth === 8 && (colour === 2 || colour === 6) && interlaced === 0);
  const channels = colour === 6 ? 4 : 3;
  const raw = inflateSync(Buffer.concat(data));
  const row = width * channels;
  const pixels = Buffer.alloc(row * height);
  for (let y = 0; y < height; y++) {
    const filter = raw[y * (row + 1)];
    for (let x = 0; x < row; x++) {
      const to = y * row + x;
      const left = channels <= x ? pixels[to - channels] : 0;
      const up = 0 < y ? pixels[to - row] : 0;
      const corner = channels <= x && 0 < y ? pixels[to - row - channels] : 0;
      const guess = [0, left, up, (left + up) >> 1, paeth(left, up, corner)];
      pixels[to] = raw[y * (row + 1) + 1 + x] + guess[filter];
    }
  }
  return { width, height, channels, pixels };
}

function paeth(left, up, corner) {
  const guess = left + up - corner;
  const [a, b, c] = [left, up, corner].map((each) => Math.abs(guess - each));
  if (a <= b && a <= c) return left;
  return b <= c ? up : corner;
}

function encoded(width, height, palette, indexed) {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 3, 0, 0, 0], 8);
  const colours = Buffer.from(
    [...palette.keys()].flatMap((each) => [
      each >> 16,
      (each >> 8) & 255,
      each & 255,
    ]),
  );
  return Buffer.concat([
    SIGNATURE,
    chunk("IHDR", header),
    chunk("PLTE", colours),
    chunk("IDAT", deflateSync(indexed, { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

function chunk(type, body) {
  const whole = Buffer.concat([
    Buffer.alloc(4),
    Buffer.from(type, "latin1"),
    body,
    Buffer.alloc(4),
  ]);
  whole.writeUInt32BE(body.length, 0);
  whole.writeUInt32BE(
    crc32(whole.subarray(4, 8 + body.length)),
    8 + body.length,
  );
  return whole;
}
