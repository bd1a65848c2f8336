import { mm } from '../units/print.js';
import { completeFormat } from './complete-format.js';
import { maskImage } from './complete-mask.js';
import type { Fault } from './explain.js';
import { orList } from './fields.js';
import { slugOf } from './names.js';
import type { Written } from './schema.js';

type Given = Pick<Written, 'format' | 'holders' | 'masks'>;

/** What cannot be true of a mask, beside the picture that it makes smaller. */
export function masksFit({ format, holders, masks = [] }: Given): readonly Fault[] {
  const { short, long } = completeFormat(format).image;
  const slugs = masks.map(({ name }) => slugOf(name));
  return masks.flatMap((mask, index): readonly Fault[] => {
    const fault = (key: string, what: string, accepted: string): Fault => ({
      path: ['masks', index, key],
      at: 'value',
      what,
      accepted,
    });
    const same = slugs.indexOf(slugs[index] ?? '');
    if (same !== index)
      return [fault('name', `Mask ${same + 1} has this name already.`, 'Give each mask its own name.')];
    if (mask.image !== undefined && mask.format !== undefined)
      return [fault('format', 'The picture is given twice, by its size and by a format.', 'Delete one of the two.')];
    const image = maskImage(mask);
    if (image === null)
      return [
        fault('image', 'It is not given, nor is a format.', 'Write image: [110 mm, 110 mm], or format: quarter-plate.'),
      ];
    const key = mask.image === undefined ? 'format' : 'image';
    const faults: Fault[] = [];
    if (image.width > short || image.height > long)
      faults.push(
        fault(
          key,
          `A picture ${mm(image.width)} across and ${mm(image.height)} up is larger than what the film receives.`,
          `Write at most ${mm(short)} across and ${mm(long)} up: the back turns, and the mask with it.`,
        ),
      );
    const most = Math.min(image.width, image.height) / 2;
    if (mask.corners > most)
      faults.push(
        fault('corners', `Corners of ${mm(mask.corners)} are rounder than a circle.`, `Write ${mm(most)} or less.`),
      );
    const names = (holders ?? []).map(({ name }) => name);
    if (mask.holder !== undefined && !names.includes(mask.holder))
      faults.push(
        fault(
          'holder',
          `No holder is called ${mask.holder}.`,
          names.length === 0 ? 'Delete the key.' : `Write ${orList(names)}.`,
        ),
      );
    return faults;
  });
}
