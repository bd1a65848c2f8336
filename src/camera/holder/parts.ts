import { across } from '../../geometry/placement.js';
import { box, circle, rectangle } from '../../geometry/shapes.js';
import { boughtPlate, joined } from '../../joinery/plate.js';
import type { Part } from '../../model/part.js';
import { inStances } from '../loose.js';
import type { HeldHolder } from './size.js';

/** A stand-in: a block of the holder's outside size, holed for the pins. */
export const holderParts = (own: HeldHolder): readonly Part[] => [
  boughtPlate({
    id: own.id,
    name: own.name,
    role: 'holder',
    thickness: own.thickness,
    outline: rectangle(box(-own.width / 2, -own.closedExtent, own.width / 2, own.openExtent)),
    holes: own.pinHoles.map((p) => circle(p.x, p.y, p.diameter + 0.2)),
    placements: inStances({ holder: own.name }, across(0, 0, own.seat), [own.stance]),
    joins: joined('rest', own.on),
    massKg: own.massKg,
  }),
];
