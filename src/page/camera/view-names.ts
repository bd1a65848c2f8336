/** From where the camera is looked at; the first is how it is met. */
export const viewNames = ['corner', 'front', 'behind', 'left', 'right', 'above', 'below'] as const;
export type ViewName = (typeof viewNames)[number];
