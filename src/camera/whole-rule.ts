import type { Build } from '../assembly/build.js';
import type { Design } from '../design/design.js';
import type { Finding } from '../model/finding.js';
import type { Camera } from './camera.js';

/** A rule that takes more than one object to judge. It measures the placed parts where a part has what it judges. */
export type WholeRule = (design: Design, camera: Camera, build: Build) => readonly Finding[];
