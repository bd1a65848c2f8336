import { archived } from './archived.js';
import { card } from './card.js';
import { compare } from './compare.js';
import { explain, moves } from './explain.js';
import { benchOpen, benchSave, lens } from './lens.js';
import { formatNames, newDesign } from './new-design.js';
import { partFiles, partSaid } from './part.js';
import { places } from './places.js';
import { processCard, processSteps } from './process.js';
import type { Answer, Given, QuestionName } from './questions.js';
import { reading } from './reading.js';
import { section } from './section.js';
import { sheets } from './sheets.js';
import { sitting } from './sitting.js';
import { solids } from './solids.js';
import { spacer } from './spacer.js';
import { surveyDesign, surveyFile, surveyLists, surveyShown } from './survey.js';
import { whatIfInputs, whatIfPoint } from './what-if.js';

/** How each question is answered. */
export const answers: {
  readonly [Name in QuestionName]: (given: Given<Name>) => Answer<Name> | Promise<Answer<Name>>;
} = {
  reading,
  places,
  solids,
  section,
  'format-names': formatNames,
  'new-design': newDesign,
  lens,
  'bench-open': benchOpen,
  'bench-save': benchSave,
  sheets,
  'what-if-inputs': whatIfInputs,
  'what-if-point': whatIfPoint,
  archived,
  compare,
  'part-said': partSaid,
  'part-files': partFiles,
  spacer,
  explain,
  moves,
  sitting,
  card,
  process: processSteps,
  'process-card': processCard,
  'survey-lists': surveyLists,
  'survey-shown': surveyShown,
  'survey-file': surveyFile,
  'survey-design': surveyDesign,
};
