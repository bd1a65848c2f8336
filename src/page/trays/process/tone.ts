import { type Act, actsOf, elapsed, type StepClock } from './reckon.js';

/** Notes are handed to the sound so far ahead: a tab in the background is looked at once a minute, s. */
const AHEAD = 90;
/** A short note comes before what is to be done, s. */
const READY = 5;

/** Height in Hz, length in s, and how often. */
type Notes = readonly [height: number, length: number, times: number];

const NOTES: Readonly<Record<Act['kind'], Notes | null>> = {
  pour: [880, 0.15, 2],
  begin: [880, 0.15, 2],
  stand: null,
  drain: [440, 0.7, 1],
  done: [660, 0.3, 3],
};
const READY_NOTE: Notes = [660, 0.08, 1];
const LOUDNESS = 0.4;

interface Tones {
  /** Hands on what comes next; what was handed on for a clock that has since been moved is taken back. */
  readonly follow: (clock: StepClock | null, now: number) => void;
}

/** Notes at what is to be done, by the sound's own clock, so that they come in time where the page itself is given none. */
export function tones(): Tones {
  const box: { sound: AudioContext | null; of: string; lookedAt: number } = { sound: null, of: '', lookedAt: 0 };
  const handedOn = new Map<string, readonly OscillatorNode[]>();
  const takeBack = () => {
    for (const notes of handedOn.values()) for (const note of notes) note.stop();
    handedOn.clear();
  };
  return {
    follow: (clock, now) => {
      if (clock === null || clock.pausedAt !== null) {
        takeBack();
        return;
      }
      box.sound ??= new AudioContext();
      const { sound } = box;
      void sound.resume();
      // after a sleep the sound's clock is behind by as much as it slept
      const of = `${clock.startedAt}`;
      if (of !== box.of || now - box.lookedAt > (AHEAD / 2) * 1000) takeBack();
      Object.assign(box, { of, lookedAt: now });
      const at = elapsed(clock, now);
      for (const act of actsOf(clock.steps)) {
        const notes = NOTES[act.kind];
        if (notes === null) continue;
        for (const [own, when] of [
          [READY_NOTE, act.at - READY],
          [notes, act.at],
        ] as const) {
          const name = `${when} ${act.kind}`;
          if (when < at || when > at + AHEAD || handedOn.has(name)) continue;
          handedOn.set(name, play(sound, own, sound.currentTime + when - at));
        }
      }
    },
  };
}

function play(sound: AudioContext, [height, length, times]: Notes, from: number): readonly OscillatorNode[] {
  return Array.from({ length: times }, (_, i) => from + 1.7 * i * length).map((begin) => {
    const [note, loudness] = [sound.createOscillator(), sound.createGain()];
    note.frequency.value = height;
    loudness.gain.value = LOUDNESS;
    note.connect(loudness).connect(sound.destination);
    note.start(begin);
    note.stop(begin + length);
    return note;
  });
}
