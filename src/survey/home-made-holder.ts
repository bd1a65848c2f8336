import type { WrittenHolder } from '../design/schema.js';

/** Dark slide's channel of 1.25 mm board, and the lip ring of 0.5 mm card against which the film lies. */
const CHANNEL_AND_LIP = 1.25 + 0.5;
/** The film in its pocket, both sides together. */
const POCKET_PLAY = 0.8;
/** Wood round the pocket, each side. */
const RIM = 11;
/** From the image to the closed end. */
const CLOSED_END = 20;
/** Behind the image at the open end, for the velvet of the light trap: 18 to 24, and the longer one is sure to have room. */
const TRAP = 24;

/**
 * The single holder, loaded from behind, that can be cut from the sheet of the camera: face, channel, lip, pocket and
 * lid. Common practice, no source.
 *
 * @param ply thickness of the sheet
 * @param width nominal, of the film
 * @param long long side of the image
 */
export const homeMadeHolder = (ply: number, width: number, long: number): WrittenHolder => ({
  name: 'paper holder',
  filmDepth: ply + CHANNEL_AND_LIP,
  depthTo: 'emulsion',
  width: width + POCKET_PLAY + 2 * RIM,
  length: long + CLOSED_END + TRAP,
  thickness: 3 * ply + CHANNEL_AND_LIP,
});
