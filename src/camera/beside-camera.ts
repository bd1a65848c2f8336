/** The folder of prints that are used away from the camera and have no place in it. */
export const BESIDE_CAMERA = 'prints-beside';
