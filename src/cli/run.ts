import { readFileSync } from 'node:fs';
import { Command, CommanderError } from 'commander';
import { EXIT, Stop } from './stop.js';
import type { Terminal } from './terminal.js';

/**
 * Runs one command line and gives its exit code. Each command is loaded when it is called, so that the quick ones stay
 * quick.
 */
export async function run(words: readonly string[], terminal: Terminal): Promise<number> {
  let code: number = EXIT.done;
  const spoken: string[] = [];
  const complaints: string[] = [];
  const program = commands(terminal, (ended) => {
    code = ended;
  });
  for (const command of [program, ...program.commands])
    command
      .exitOverride()
      .showHelpAfterError(
        `(tailboard ${command === program ? '' : `${command.name()} `}--help shows what can be given)`,
      )
      .configureHelp({ helpWidth: terminal.width })
      .configureOutput({ writeOut: (text) => spoken.push(text), writeErr: (text) => complaints.push(text) });
  try {
    await program.parseAsync(words, { from: 'user' });
  } catch (error) {
    if (error instanceof CommanderError) {
      code = error.exitCode === 0 ? EXIT.done : EXIT.wrongCall;
      if (error.code === 'commander.excessArguments') complaints.push(unquoted(words));
    } else if (error instanceof Stop) {
      code = error.exitCode;
      if (error.message !== '') complaints.push(`${error.message}\n`);
    } else throw error;
  }
  if (complaints.length > 0) await terminal.err(complaints.join(''));
  if (spoken.length > 0) await terminal.out(spoken.join(''));
  return code;
}

function commands(terminal: Terminal, end: (code: number) => void): Command {
  const program = new Command('tailboard')
    .description('Designs a sliding-box camera around a lens that you have, and writes the files to cut and print it.')
    .version(version(), '--version', 'print the version of the program');
  program
    .command('new')
    .description('write a commented design file to start from; asks for what is not given')
    .argument('<file>', 'the file to write; one that exists is left alone')
    .option('--format <name>', 'what is exposed, such as 4x5, 5x7 or 8x10')
    .option('--focal-length <length>', 'as engraved on the lens or measured, such as 210mm')
    .option('--flange-distance <length>', 'from the lens seat to the film at infinity')
    .option('--thickness <length>', 'of the plywood, as measured')
    .option('--kerf <length>', 'how wide the laser cuts')
    .action(async (file: string, given: Readonly<Record<string, string>>) => {
      const { newDesign } = await import('./new.js');
      end(await newDesign(file, given, terminal));
    });
  program
    .command('plan')
    .description('solve the camera and print its figures, and what is wrong with them')
    .argument('<design>', 'the design file')
    .option('--json', 'print one JSON document instead of a page')
    .action(async (file: string, options: { readonly json?: boolean }) => {
      const { plan } = await import('./plan.js');
      end(await plan(file, options, terminal));
    });
  program
    .command('check')
    .description('plan, put the camera together in the computer, and prove that it works; exit 1 where it does not')
    .argument('<design>', 'the design file')
    .option('--only <rule>', 'report this rule alone; may be given several times', collect, [])
    .option('--register', 'print the whole budget of the register too: what strays, by how much, what to measure')
    .option('--leaks <folder>', 'draw a small section through each leak that is found')
    .option('--json', 'print one JSON document instead of a page')
    .action(async (file: string, options: import('./check.js').CheckOptions) => {
      const { check } = await import('./check.js');
      end(await check(file, options, terminal));
    });
  program
    .command('build')
    .description('check, then write every file to cut and print the camera')
    .argument('<design>', 'the design file')
    .option(
      '-o, --output <folder>',
      'where to write (default: output/<name of the design>, of kits output/<name>-10-kits)',
    )
    .option('--despite <rule>', 'build although this rule is broken; may be given several times', collect, [])
    .option('--copies <count>', 'so many kits on sheets that they share, with packing lists and a page for a class')
    .option('--prices <file>', 'what things cost, for the cost of the kits')
    .option(
      '--effort <number>',
      'how long to look for better sheets, in tenths of a second: 0 takes the first (default: 20)',
    )
    .option(
      '--since <camera>',
      'cut only what an earlier camera does not have: its built folder, plan.json or design file',
    )
    .action(async (file: string, options: import('./build.js').BuildOptions) => {
      const { build } = await import('./build.js');
      end(await build(file, options, terminal));
    });
  program
    .command('spacer')
    .description('figures and cut files of one spacer: for a holder of the design, or for any film depth')
    .argument('<design>', 'the design file')
    .option('--holder <name>', 'a holder of the design')
    .option('--depth <length>', 'film depth of a holder that the design does not know, such as 24mm')
    .option('--name <text>', 'what to call that holder')
    .option('--thickness <length>', 'of the sheet at hand, where it is not that of the camera, such as 3.9mm')
    .option('--remnant <file>', 'cut from this piece; of several, from the smallest that holds all', collect, [])
    .option('-o, --output <folder>', 'where to write (default: output/<name of the design>-spacer-<holder>)')
    .option('--json', 'print one JSON document instead of a page')
    .action(async (file: string, options: import('./spacer.js').SpacerOptions) => {
      const { spacer } = await import('./spacer.js');
      end(await spacer(file, options, terminal));
    });
  program
    .command('part')
    .description('figures, cut files and prints of single parts: another lens board, a mask, a replacement')
    .argument('<design>', 'the design file')
    .argument('<id...>', 'parts by their marks in the parts list, such as F6 F7 lens-clamp')
    .option('--pieces <n>', 'so many of each part that is cut (default: as many as the camera has)')
    .option('--thickness <length>', 'of the sheet at hand, where it is not that of the camera, such as 3.9mm')
    .option(
      '--since <camera>',
      'the camera that they are for: its built folder, plan.json or design file (default: output/<name of the design>)',
    )
    .option('--remnant <file>', 'cut from this piece; of several, from the smallest that holds all', collect, [])
    .option('--despite <rule>', 'write although this rule is broken; may be given several times', collect, [])
    .option('-o, --output <folder>', 'where to write (default: output/<name of the design>-parts)')
    .option('--json', 'print one JSON document instead of a page')
    .action(async (file: string, ids: readonly string[], options: import('./part.js').PartOptions) => {
      const { part } = await import('./part.js');
      end(await part(file, ids, options, terminal));
    });
  program
    .command('coupon')
    .description('write the test piece for the sheet and the laser; take what was measured on it into the design file')
    .argument('<design>', 'the design file')
    .option('--readings [file]', 'take readings into the design file; without a file they are asked for')
    .option('-o, --output <folder>', 'where to write the test piece (default: output/coupon-<material>)')
    .action(async (file: string, options: import('./coupon.js').CouponOptions) => {
      const { coupon } = await import('./coupon.js');
      end(await coupon(file, options, terminal));
    });
  program
    .command('lens')
    .description('focal length and flange distance of a lens from readings on the bench, and how well they are known')
    .argument('<readings>', 'CSV with the header magnification,distance or image,object,distance; or YAML')
    .option('--at <magnification>', 'tell where the film stands then; may be given several times', collect, [])
    .option('--plot <file>', 'draw what the readings leave over into this SVG')
    .option('--write <design>', 'put the figures, and how well they are known, into this design file')
    .option('--json', 'print one JSON document instead of a page')
    .action(async (file: string, options: import('./lens.js').LensOptions) => {
      const { lens } = await import('./lens.js');
      end(await lens(file, options, terminal));
    });
  program
    .command('expose')
    .description(
      'the setting for one sitting, energy and pops of a flash or a time; or the card, or the next sheet of a log',
    )
    .argument(
      '<design>',
      'the design file; what it says under sitting need not be typed, and what is typed goes before it',
    )
    .optionsGroup('Where the sitter is:')
    .option('--subject <distance>', 'from the front principal plane to the eyes, such as 1.2m')
    .option('--magnification <ratio>', 'in place of a distance, such as 1:4')
    .option('--head <height>', 'in place of a distance: of the head on the ground glass, 90mm, or of the picture, 60%')
    .option('--head-height <length>', 'of the head in life (default: 250 mm)')
    .optionsGroup('What is set, and what is in the light:')
    .option('--aperture <number>', 'as marked, such as f/16')
    .option('--speed <index>', 'of the paper or film')
    .option('--filter <factor>', 'in the light; may be given several times', gather)
    .option('--density <density>', 'in the light; may be given several times', gather)
    .option('--filter-set <name>', 'one of the sets of the design, or none')
    .option('--lamp-distance <length>', 'from the flash lamp to the sitter now')
    .option('--flash-most <energy>', 'of one pop at full power')
    .option('--reciprocity <exponent>', 'what a long exposure loses, such as 1.31')
    .option('--process <word>', 'negative or reversal')
    .option('--paper <name>', 'what is exposed')
    .optionsGroup('One setting that is known to be right:')
    .option('--meter-time <time>', 'a meter reading: its time, such as 1/4s')
    .option('--meter-aperture <number>', 'its aperture')
    .option('--meter-speed <index>', 'the speed that the meter was set to')
    .option('--flash-energy <energy>', 'a flash reading: its energy, such as 400 or 1.2kJ')
    .option('--flash-aperture <number>', 'its aperture')
    .option('--flash-distance <length>', 'from the lamp to where it was made')
    .option('--flash-speed <index>', 'the speed for which it was made')
    .option('--test-magnification <ratio>', 'the reading was found by a test with the camera at this magnification')
    .option('--test-filter <factor>', 'of all that stood in the light at that test')
    .optionsGroup('Sheet by sheet, with a log:')
    .option(
      '--log <file>',
      'the setting for the next sheet of a sitting log, dialled in from what came out, and added to it',
    )
    .option(
      '--batch <name>',
      'batch of the paper, where it is another than before; with --result, of the sheet that came out',
    )
    .option('--strip <word>', 'with --log: a test strip in whole or half stops instead of one exposure')
    .option('--steps <count>', 'strips of it, 2 to 8 (default: 5)')
    .optionsGroup('What came out, for the log:')
    .option(
      '--result <word>',
      'what the sheet that waits looks like: "too dark", "too light" or right; void where it was botched',
    )
    .option('--by <stops>', 'by how much, judged in half stops')
    .option('--best-strip <number>', 'the strip that is meant, counted from the one that got least')
    .option('--read-density <density>', 'density of the sheet, where it was read')
    .option('--strip-density <density>', 'of each strip, in their order; once for each', gather)
    .option('--wanted <density>', 'the density that is wanted there')
    .option('--cast <colour>', 'colour that lies over the picture: red, green, blue, cyan, magenta or yellow')
    .option('--cast-by <density>', 'its strength as a density, by eye')
    .option('--gave-energy <energy>', 'what the last sheet was really given, where it was not what was advised')
    .option('--gave-time <time>', 'the same by time')
    .option('--bath-start <temperature>', 'of the developer as the sheet went in, such as 24C')
    .option('--bath-end <temperature>', 'as it came out')
    .option('--note <text>', 'anything else about the last sheet')
    .optionsGroup('What is written:')
    .option(
      '--card [folder]',
      'write the card that rides with the camera, SVG and PDF (default: output/<name of the design>-card)',
    )
    .option('--json', 'print one JSON document instead of a page')
    .action(async (file: string, options: import('./expose.js').ExposeOptions) => {
      const { asksForLog, exposeLog } = await import('./expose-log.js');
      const { expose } = await import('./expose.js');
      end(await (asksForLog(options) ? exposeLog : expose)(file, options, terminal));
    });
  program
    .command('process')
    .description('the step sheet of a print: when each bath is poured and drained, and how much of it all prints take')
    .argument('<file>', 'the process: steps with their times, as the makers of your chemicals give them')
    .option('--prints <count>', 'how many are made (default: as the file says)')
    .option('--fill <time>', 'from the beginning of pouring until the bath is in, such as 8s')
    .option('--drain <time>', 'from the beginning of draining until the tank is empty')
    .option('--design <file>', 'take what the file does not say of the tank from a holder of this design')
    .option('--holder <name>', 'which one, where it has several that are tanks')
    .option('-o, --output <folder>', 'write the card to lie beside the trays into it, SVG and PDF')
    .option('--paper <name>', 'of the card: A5, A4 or Letter (default: that of the design, else A5)')
    .option('--json', 'print one JSON document instead of a page')
    .action(async (file: string, options: import('./process.js').ProcessOptions) => {
      const { processSteps } = await import('./process.js');
      end(await processSteps(file, options, terminal));
    });
  program
    .command('explain')
    .description('how a figure of the plan came about, what governs it, and what it would take to change it')
    .argument('<design>', 'the design file')
    .argument('[figure]', 'its name in plan --json, such as slide.rearBoxInside; left out, all names are listed')
    .option('--json', 'print one JSON document instead of a page')
    .action(async (file: string, figure: string | undefined, options: { readonly json?: boolean }) => {
      const { explain } = await import('./explain.js');
      end(await explain(file, figure, options, terminal));
    });
  program
    .command('survey')
    .description('what camera each lens of a list could become for each format: coverage, reach, size, mass, sheets')
    .argument('<lenses...>', 'lists of lenses')
    .option('--format <name>', 'this format alone; may be given several times', collect, [])
    .option('--sort <figure>', 'reach, mass, sheets, travel, size, name or covers (default: as in the lists)')
    .option('--json', 'print one JSON document instead of a page')
    .option('--csv', 'print a table for a spreadsheet instead of a page')
    .option('--chart <file>', 'draw formats against lenses into this SVG')
    .action(async (files: readonly string[], options: import('./survey.js').SurveyOptions) => {
      const { survey } = await import('./survey.js');
      end(await survey(files, options, terminal));
    });
  program
    .command('compare')
    .description(
      'what changed from one camera to another: figures, parts to cut again, parts that still fit, what is lost',
    )
    .argument('<before>', 'the camera that stands: its built folder, its plan.json, or a design file')
    .argument('<after>', 'the same of the camera that it is to become')
    .option('--json', 'print one JSON document instead of a page')
    .action(async (before: string, after: string, options: { readonly json?: boolean }) => {
      const { compare } = await import('./compare.js');
      end(await compare(before, after, options, terminal));
    });
  program
    .command('serve')
    .description('the page in the browser: change a number, see the camera; on this machine alone, until Ctrl-C')
    .argument('[design]', 'the design file to show and to save; left out, the page opens a sample')
    .option('--port <number>', 'of the address http://127.0.0.1:<number>/; 0 takes a free one (default: 8457)')
    .action(async (file: string | undefined, options: { readonly port?: string }) => {
      const { serve } = await import('./serve.js');
      await serve(file, options, terminal);
    });
  return program;
}

/** What came apart at a blank, and how it holds together; empty where no flag has two words behind it. */
function unquoted(words: readonly string[]): string {
  const at = words.findIndex((word, index) => {
    const [flag = '', first = ''] = words.slice(index - 2, index);
    return index >= 2 && isFlag(flag) && !isFlag(first) && !isFlag(word);
  });
  if (at < 0) return '';
  const [flag = '', first = '', second = ''] = words.slice(at - 2);
  return `A value with a blank in it needs quotes: ${flag} "${first} ${second}".\n`;
}

const isFlag = (word: string): boolean => word.startsWith('--') && !word.includes('=');

/** As `collect`, but nothing where the flag is not given: a list of the design then holds. */
const gather = (value: string, earlier: readonly string[] = []): readonly string[] => [...earlier, value];

const collect = (value: string, earlier: readonly string[]): readonly string[] => [...earlier, value];

/** From the package's own description, which lies two folders up both in the source and in what is shipped. */
function version(): string {
  const described = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
  return (described as { readonly version: string }).version;
}
