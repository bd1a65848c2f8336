import { incidentLight, reflectedLight } from '../standards/meter-constants.js';

/**
 * Exposure value, EV = log2(N²/t): a setting as one number, whatever the speed. With a speed it stands for a light:
 * N²/t = L·S/K on the meter that looks at the subject, E·S/C on the one held at it. Source: encyclopedia article Exposure
 * value. The f/16 rule, f/16 at 1/S s, is 14.64 at ISO 100 and not the round 15.
 *
 * @param t time, s
 */
export const exposureValue = (N: number, t: number): number => Math.log2((N * N) / t);

/** Time of an exposure value at an f-number, s. */
export const timeAtValue = (value: number, N: number): number => (N * N) / 2 ** value;

/** f-number of an exposure value at a time in s. */
export const apertureAtValue = (value: number, t: number): number => Math.sqrt(t * 2 ** value);

/** Luminance that asks for an exposure value at a speed, cd/m². */
export const luminance = (value: number, speed: number, K = reflectedLight.constant.value): number =>
  (K * 2 ** value) / speed;

/** Illuminance that asks for an exposure value at a speed, lx. */
export const illuminance = (value: number, speed: number, C = incidentLight.constant.value): number =>
  (C * 2 ** value) / speed;

/** Reflectance of the subject of which both kinds of meter ask for the same, πK/C. Source: "Calibrated reflectance", basiccamera.blogspot.com. */
export const equivalentReflectance = (K: number, C: number): number => (Math.PI * K) / C;
