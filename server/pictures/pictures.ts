// The pictures of a record, each a function of the shop and one entry that gives SVG text. Nothing here is read or written.
export { fitPicture, fitPictures } from "./fit-picture.ts";
export type { PictureOptions, Theme } from "./ink.ts";
export { linePicture } from "./line-picture.ts";
export { rankingPicture } from "./ranking-picture.ts";
export {
  rankingTable,
  type LeftInBore,
  type RankedTool,
  type RankingTable,
} from "./ranking.ts";
export { stackPicture } from "./stack-picture.ts";
export { UNREAD } from "./words.ts";
