import type { StepWords } from '../../model/build-step.js';
import { mm } from '../../units/print.js';
import { byCaliper, countedOut, exchanged } from '../bench-figures.js';
import { PIN_PROUD } from './parts.js';
import { type PlacedSpacer, wantedOf } from './size.js';

export function spacerSteps({ spacer, ownPins, glassFirst = false }: PlacedSpacer): readonly StepWords[] {
  const { id, holder, under, asDrawn, made, tolerance, glued } = spacer;
  if (under === 'none') return [];
  const { plies, shims } = made;
  const what = under === 'glass' ? 'the glass frame' : `the ${holder} itself`;
  const layers = plies.length > 1 ? `${plies.length - 1} × ${id} and ${id}T` : `${id}T alone`;
  const pins = [...ownPins].sort((a, b) => a.x - b.x).map(({ diameter }) => mm(diameter));
  const shimsOf = countedOut(shims);
  const wanted = byCaliper(wantedOf(spacer));
  const size =
    wanted === byCaliper(asDrawn) ? wanted : `${wanted} as glass and film stand, ${byCaliper(asDrawn)} as drawn`;
  const chosen = glued === null && made.thickness !== asDrawn ? 'as reckoned from what was measured' : 'as drawn';
  return [
    {
      step: 'spacers',
      acts: [
        `The ${holder} needs a spacer. It lies on the seat under ${what}, and makes up ${size}.`,
        ...(plies.length > 0
          ? [
              `It is glued of ${layers}, the one with four holes uppermost, marked faces up. Dry first: push the shanks of two drill bits, waxed, through the holes that all plies share, to keep them in line. They are as thick as the seat pins.`,
              'Glue the plies thinly, clamp them between flat boards, pull the drill bits out before they stick, and let the glue set as long as its label says.',
              `Cut its own pins to ${byCaliper((plies.at(-1) ?? 0) + PIN_PROUD)}, not longer: what lies on the spacer would rock on them.`,
              `Press them into ${id}T, ${pins.join(' on the left and ')} on the right. They stand ${mm(PIN_PROUD)} out of the face that looks to the rear, and end flush below.`,
            ]
          : []),
        ...(shims.length > 0
          ? [
              plies.length > 0
                ? `Measure the glued plies, through the window. Then put shims on the seat side until the whole is right: ${shimsOf}, ${chosen}, and as the table in the chapter on the register says. Cut the holes for the seat pins into them too. Fix them with spots of contact adhesive.`
                : `It is made of shims alone, thin frames cut with a knife: ${shimsOf}, ${chosen}, each with the holes for the seat pins. Fix them to each other with spots of contact adhesive: they are ${id}.`,
            ]
          : []),
        ...(glued === null
          ? []
          : [
              `Glued, with its shims, it was measured at ${byCaliper(glued.measured)}.${glassFirst ? '' : exchanged({ ...glued, lacks: glued.wanted - glued.measured, within: tolerance / 2 })}`,
            ]),
        ...(glassFirst
          ? [
              'Mend the glass first, measure it again, then ask for this spacer again: it is reckoned from the glass as that stands.',
            ]
          : []),
        `Write ${plies.length > 0 ? `“${holder}” on its edge` : `“${id}, ${holder}” on it`}.`,
      ],
      checks: [
        `${shims.length > 0 ? 'With its shims it' : 'It'} is ${wanted} thick at all four corners, within ${byCaliper(tolerance / 2)}.`,
        ...(plies.length > 0 ? ['It goes on the seat pins by hand. What lies on it goes on its own pins.'] : []),
      ],
      needs: [
        ...(plies.length > 0
          ? ['wood glue', 'clamps, 6 or more; masking tape', 'fine saw', 'drill bits as thick as the seat pins']
          : []),
        ...(shims.length > 0 ? ['contact adhesive'] : []),
        'caliper that reads 0.05 mm or better',
      ],
    },
    {
      step: 'glass-in',
      acts: [
        under === 'glass'
          ? `To focus for the ${holder}, lay the spacer ${id} on the seat first, then the glass frame on the spacer. Take both out for the picture.`
          : `For a picture with the ${holder}, lay the spacer ${id} on the seat first, then the holder on the spacer.`,
      ],
    },
  ];
}
