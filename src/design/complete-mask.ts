import { formatNamed } from '../standards/formats.js';
import type { AskedMask } from './design.js';
import type { Written } from './schema.js';

type WrittenMask = NonNullable<Written['masks']>[number];

/** The picture that a mask leaves, the back upright; null where nothing is said of it. */
export function maskImage({ image, format }: Pick<WrittenMask, 'image' | 'format'>): AskedMask['image'] | null {
  const [width, height] = image ?? formatNamed(format ?? '')?.image.value ?? [null, null];
  return width === null || height === null ? null : { width, height };
}

export function completeMask(written: WrittenMask, firstHolder: string): AskedMask {
  const image = maskImage(written);
  if (image === null) throw new Error(`the mask ${written.name} has no size, and the checks let it pass`);
  return { name: written.name, image, corners: written.corners, holder: written.holder ?? firstHolder };
}
