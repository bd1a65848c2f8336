import type { Mark, Page } from '../../src/model/page.js';

/** Every kind of mark, each where no other one lies. */
export const shapes: readonly Mark[] = [
  {
    kind: 'line',
    points: [
      { x: 5, y: 5 },
      { x: 95, y: 5 },
      { x: 95, y: 135 },
      { x: 5, y: 135 },
    ],
    closed: true,
    stroke: { colour: '#cc2200', width: 2 },
  },
  {
    kind: 'line',
    points: [
      { x: 10, y: 20 },
      { x: 40, y: 30 },
      { x: 90, y: 20 },
    ],
    stroke: { colour: '#0033cc', width: 1.5, dash: [6, 2] },
  },
  {
    kind: 'line',
    points: [
      { x: 60, y: 40 },
      { x: 90, y: 40 },
      { x: 60, y: 70 },
    ],
    closed: true,
    fill: '#007733',
  },
  {
    kind: 'circle',
    centre: { x: 30, y: 55 },
    radius: 12,
    fill: '#ffdd66',
    stroke: { colour: '#333333', width: 1 },
  },
];

export const words: readonly Extract<Mark, { kind: 'words' }>[] = [
  { kind: 'words', at: { x: 10, y: 90 }, text: 'Große Eule ½ ⅞ ± × °', size: 4, anchor: 'start', colour: '#222222' },
  {
    kind: 'words',
    at: { x: 90, y: 100 },
    text: '120000.5 J',
    size: 3,
    anchor: 'end',
    colour: '#222222',
    bold: true,
  },
  { kind: 'words', at: { x: 50, y: 110 }, text: 'in the middle', size: 3.5, anchor: 'middle', colour: '#222222' },
  { kind: 'words', at: { x: 20, y: 130 }, text: 'upwards', size: 3, anchor: 'start', colour: '#222222', turned: 0.5 },
];

export const samplePage: Page = {
  title: 'Heron <5x7> & "friends"',
  description: 'One of each mark.',
  width: 100,
  height: 140,
  marks: [...shapes, ...words],
};
