import { formatNamed } from '../standards/formats.js';
import { publishedHolderFor } from '../standards/holders.js';
import { mm } from '../units/print.js';

/** What must be known before a design can begin; lengths in mm. */
export interface StarterAnswers {
  readonly name: string;
  /** A name from the table of formats. */
  readonly format: string;
  readonly focalLength: number;
  /** null where nobody has measured it: the focal length is taken, and marked as made up. */
  readonly flangeDistance: number | null;
  readonly thickness: number;
  /** null where there is no test piece yet: a usual one is taken, and marked as made up. */
  readonly kerf: number | null;
}

/** The boards of a paper holder cut from the same sheet, as `workshop.boards` has them where nobody measured: channel and lip. */
const BOARDS = 1.25 + 0.5;

/** A barrel has about these proportions of the focal length. Choices of ours: placeholders only. */
const BARREL = { diameter: 0.28, grip: 0.1, front: 0.09, rear: 0.14, frontDiameter: 0.31, rearDiameter: 0.25 };

/** Common practice, no source; mm. */
const USUAL_KERF = 0.15;

/** A commented design file to start from: it is accepted as it stands, and says of each figure what it is and how to get it. */
export function starter({ name, format, focalLength, flangeDistance, thickness, kerf }: StarterAnswers): string {
  const known = formatNamed(format);
  if (known === undefined) throw new Error(`${format} is not in the table of formats`);
  const published = publishedHolderFor(format);
  const whole = (share: number) => mm(Math.max(1, Math.round(share * focalLength)));
  return `# A design for a sliding-box camera. Text behind # is for you; the program does not read it.
# Lengths: a bare number is mm; cm, m, in and " may be written, and fractions such as 1 1/2 in. The decimal mark is a point.

# The folder of the cut files is called after the name.
name: ${JSON.stringify(name)}

# A name from the table of formats (${known.title}), or { width, height, image: [w, h] }.
format: ${format}

lens:
  # name: what is engraved, for the titles
  focalLength: ${mm(focalLength)}
  # From the lens seat (the face that bears on the camera) to the film, for something very far away.
  # It is not the focal length: aim at the horizon, catch the image on paper, and measure.
  flangeDistance: ${flangeDistance === null ? `${mm(focalLength)} # PLACEHOLDER: as long as the focal length` : mm(flangeDistance)}
  # The widest stop. Without it f/8 is assumed.
  # maxAperture: f/6.3
  # Diameter of the image that the lens throws, and the magnification at which that is stated:
  # 1:1 for copying and process lenses, infinity for others. Without it nothing is said of dark corners.
  # coverage: { diameter: 420 mm, at: 1:1 }
  #
  # PLACEHOLDERS, made up from the focal length: MEASURE YOUR LENS and put your figures here before you cut anything.
  # All lengths count from the lens seat: front is what stands ahead of it, then grip and rear follow behind it.
  barrel:
    diameter: ${whole(BARREL.diameter)} # PLACEHOLDER: of the part that is gripped
    grip: ${whole(BARREL.grip)} # PLACEHOLDER: length that can be gripped
    front: ${whole(BARREL.front)} # PLACEHOLDER
    rear: ${whole(BARREL.rear)} # PLACEHOLDER
    frontDiameter: ${whole(BARREL.frontDiameter)} # PLACEHOLDER
    rearDiameter: ${whole(BARREL.rearDiameter)} # PLACEHOLDER
    # mass: 640 g
  # by: clamp holds a plain barrel in a printed clamp; flange and ring use what the lens has.
  # side: inside recesses the lens behind the board and so reaches nearer; front is the other way.
  mount: { by: clamp, side: inside, screws: 4 }

focus:
  # The nearest: a magnification, 1:5 being a fifth of life size on the film, or a distance such as 1.2 m.
  nearest: 1:5
  farthest: infinity
  # How far the slide runs past infinity, in case the lens is shorter than it says.
  pastInfinity: 4 mm

plywood:
  # Measured with a caliper, never the nominal figure. Several readings: [4.02 mm, 4.05 mm, 4.08 mm]
  thickness: ${mm(thickness)}
  sheet: [600 mm, 400 mm]

laser:
  # The full width that the beam takes away, from a test piece cut from the same sheet.
  kerf: ${kerf === null ? `${mm(USUAL_KERF)} # PLACEHOLDER: until the test piece says otherwise` : mm(kerf)}

groundGlass:
  thickness: 2 mm
  # Which way the frosted face looks.
  frosted: lens
  # Where it stands, measured from the face of the holder. Without it: as deep as the film of the first holder.
  # depth: ${mm(thickness + BOARDS)}

holders:
  # A paper holder cut from the same sheet, loaded from behind. Once it is made, measure from its face to the paper and
  # write that here as measured: the ground glass is set by it.
${published === undefined ? '' : `  # Delete all of holders to use the ${published.format} film holder of the published depths instead.\n`}  - { name: paper holder, make: true }

# Shims that you have, for the last tenths under a spacer.
shims: [0.1 mm, 0.25 mm, 0.5 mm]
`;
}
