/**
 * What holds for all chemicals of a print, whatever they are: said on each sheet, since here they are poured. Common
 * practice, no source; the maker's data sheet goes before it.
 */
export const cautions: readonly string[] = [
  "The maker's data sheet decides, on times, on mixing and on what to do when something is spilt.",
  'Gloves, goggles, fresh air; nothing to eat or drink beside it; never a vessel from the kitchen.',
  'Acid into water, never water into acid. Keep bleach away from developer, acid and skin.',
  'Never cap the tank tight on bleach, or on acid after carbonate: gas comes off and pressure builds. Keep its vent open.',
];
