/**
 * How the pieces are shaded. Every piece is told by two dots of a picture: where it has moved to and whether it is shown;
 * what it is made of, how thick it is, how it is lit up, and a number of its own.
 */
const PIECE = `
  uniform sampler2D pieces;
  vec4 standing(float number) { return texelFetch(pieces, ivec2(int(number + 0.5), 0), 0); }
  vec4 looking(float number) { return texelFetch(pieces, ivec2(int(number + 0.5), 1), 0); }
  // outside of every picture
  const vec4 AWAY = vec4(0.0, 0.0, 2.0, 1.0);
`;

const HEAD = `precision highp float;\nprecision highp int;\nprecision highp sampler2D;\n`;

/** How a piece is shown, 0 for not at all; what is faint is drawn in a pass of its own. */
export const WHOLE = 1;
export const FAINT = 2;

/** How a piece is lit up. */
export const PLAIN = 0;
export const TOUCHED = 1;
export const CHOSEN = 2;
export const POINTED = 3;

export const facesVertex = `${HEAD}${PIECE}
  in vec3 position;
  in vec3 normal;
  in vec4 local;
  in float number;
  uniform mat4 viewMatrix;
  uniform mat4 projectionMatrix;
  uniform float pass;
  out vec3 place;
  out vec3 facing;
  out vec4 own;
  flat out vec4 look;
  flat out float which;
  void main() {
    vec4 stand = standing(number);
    look = looking(number);
    which = number;
    place = position + stand.xyz;
    facing = normal;
    own = local;
    bool faint = stand.w > ${FAINT}.0 - 0.5;
    bool shown = stand.w > 0.5 && (pass > 1.5 || faint == (pass > 0.5));
    gl_Position = shown ? projectionMatrix * (viewMatrix * vec4(place, 1.0)) : AWAY;
  }
`;

/**
 * Stuffs by number, in the order of `stuffs` in materials.ts. With DRAFT it is what is drawn while all moves: what grain and
 * gloss cost is left out when it is compiled, for software that draws goes both ways of a question that is asked later.
 */
export const facesFragment = `${HEAD}
  in vec3 place;
  in vec3 facing;
  in vec4 own;
  flat in vec4 look;
  flat in float which;
  uniform mat4 viewMatrix;
  uniform mat4 projectionMatrix;
  uniform vec3 eye;
  uniform vec3 stuffs[9];
  uniform vec3 cuts[9];
  uniform vec3 marks[4];
  uniform float pass;
  out vec4 colour;

  #ifndef DRAFT
  float hash(vec2 p) { return fract(sin(dot(p, vec2(127.1, 311.7))) * 43758.5453); }
  float noise(vec2 p) {
    vec2 i = floor(p);
    vec2 f = fract(p);
    f = f * f * (3.0 - 2.0 * f);
    return mix(mix(hash(i), hash(i + vec2(1.0, 0.0)), f.x), mix(hash(i + vec2(0.0, 1.0)), hash(i + vec2(1.0, 1.0)), f.x), f.y);
  }
  #endif

  // birch: quiet faces with the grain along them, the plies seen on every cut edge
  vec3 plywood(vec3 base, float thickness, float tone) {
    base *= 1.0 + 0.05 * (tone - 0.5);
    if (abs(own.w) > 0.5) {
      #ifdef DRAFT
      return base * 0.985;
      #else
      float pore = noise(vec2(own.x * 0.025 + 40.0 * tone, own.y * 0.55));
      float broad = noise(vec2(own.x * 0.006 + 9.0 * tone, own.y * 0.07));
      return base * (0.985 + 0.05 * (broad - 0.5) + 0.055 * (pore - 0.5));
      #endif
    }
    float plies = max(3.0, 2.0 * floor(thickness / 2.8) + 1.0);
    float at = own.z / thickness * plies;
    // as wide as a dot of the picture, so that far away it fades to the mean
    float blur = clamp(fwidth(at) * 0.75, 0.04, 1.0);
    float inside = abs(mod(at, 2.0) - 1.0);
    float across = 1.0 - smoothstep(0.5 - blur, 0.5 + blur, inside);
    float glue = (1.0 - smoothstep(0.07, 0.07 + blur, abs(fract(at + 0.5) - 0.5))) * step(0.5, at) * step(at, plies - 0.5);
    vec3 light = base * vec3(0.93, 0.88, 0.80);
    vec3 dark = base * vec3(0.70, 0.57, 0.43);
    return mix(mix(light, dark, across), dark * 0.72, 0.45 * glue * (1.0 - blur));
  }

  // the lens as it is met: a dark rim, and in it glass
  vec3 lens(vec3 base, float radius, vec3 up) {
    float r = length(own.xy) / radius;
    if (abs(own.w) < 0.5) return base * (0.9 + 0.25 * step(0.5, fract(own.z / 3.0)));
    if (r > 0.82) return base * 1.25;
    vec3 deep = mix(vec3(0.05, 0.09, 0.11), vec3(0.24, 0.36, 0.40), smoothstep(0.0, 0.82, r));
    vec2 spot = own.xy / radius - vec2(-0.28, 0.33);
    deep += 0.55 * exp(-dot(spot, spot) * 26.0);
    return deep + 0.10 * smoothstep(0.76, 0.82, r);
  }

  vec3 surface(int stuff) {
    vec3 base = stuffs[stuff];
    if (stuff == 0) return plywood(base, look.y, look.w);
    #ifndef DRAFT
    if (stuff == 1) return base * (0.9 + 0.2 * noise(vec2(own.z * 0.05, (own.x + own.y) * 1.3)));
    #endif
    if (stuff == 7) return lens(base, look.y, facing);
    return base;
  }

  void main() {
    int stuff = int(look.x + 0.5);
    int lit = int(look.z + 0.5);
    // drawn by their insides alone, faces count as fronts to the machine
    #ifdef CUT
      bool front = false;
    #else
      bool front = gl_FrontFacing;
    #endif
    #ifdef SAWN
      if (place.x < 0.0) discard;
      if (!front) {
        // the inside of a solid is seen only where the saw has opened it: there the cut stands between the eye and here
        vec3 cut = mix(eye, place, eye.x / (eye.x - place.x));
        vec2 flat2 = cut.zy;
        float rows = (flat2.x + (mod(which, 2.0) < 0.5 ? flat2.y : -flat2.y)) / 2.6;
        float width = fwidth(rows);
        float hatch = (1.0 - smoothstep(0.10, 0.10 + width, abs(fract(rows) - 0.5))) * (1.0 - smoothstep(0.25, 0.5, width));
        vec3 face = mix(cuts[stuff], cuts[stuff] * 0.55, 0.7 * hatch);
        if (lit > 0) face = mix(face, marks[lit], 0.45);
        colour = vec4(face, pass > 0.5 && pass < 1.5 ? 0.12 : 1.0);
        return;
      }
    #endif
    vec3 normal = normalize(facing) * (front ? 1.0 : -1.0);
    vec3 seen = normalize(mat3(viewMatrix) * normal);
    float lamp = max(0.0, dot(seen, normalize(vec3(-0.45, 0.62, 0.64))));
    float bright = clamp(0.08 * normal.y + 0.98 * lamp, 0.0, 1.0);
    // shade is warm: what lights it comes from other wood
    vec3 shade = mix(vec3(0.60, 0.555, 0.52), vec3(1.0), bright);
    vec3 base = surface(stuff);
    vec3 shown = base * shade;
    #ifndef DRAFT
    if (stuff == 3 || stuff == 7) {
      vec3 toEye = normalize(mat3(viewMatrix) * (eye - place));
      vec3 halfway = normalize(toEye + normalize(vec3(-0.45, 0.62, 0.64)));
      shown += (stuff == 3 ? 0.35 : 0.12) * pow(max(0.0, dot(seen, halfway)), 28.0);
    }
    #endif
    if (lit > 0) shown = mix(shown, marks[lit] * (0.55 + 0.5 * lamp), lit == ${TOUCHED} ? 0.28 : 0.5);
    float alpha = 1.0;
    #ifndef SAWN
    if (stuff == 4) {
      vec3 toEye = normalize(mat3(viewMatrix) * (eye - place));
      alpha = mix(0.78, 0.5, abs(dot(seen, toEye)));
    }
    #endif
    if (pass > 0.5 && pass < 1.5) alpha = 0.10;
    colour = vec4(shown, alpha);
  }
`;

/**
 * The whole camera while it moves: light is reckoned for each corner and not for each dot, of which there are many more.
 * What is seen of plies and of the lens is the same.
 */
export const quickVertex = `${HEAD}${PIECE}
  in vec3 position;
  in vec3 normal;
  in vec4 local;
  in float number;
  uniform mat4 viewMatrix;
  uniform mat4 projectionMatrix;
  uniform vec3 stuffs[9];
  uniform vec3 marks[4];
  out vec3 shown;
  out vec2 own;
  flat out int pattern;
  void main() {
    vec4 stand = standing(number);
    vec4 look = looking(number);
    int stuff = int(look.x + 0.5);
    int lit = int(look.z + 0.5);
    bool edge = abs(local.w) < 0.5;
    vec3 base = stuffs[stuff];
    pattern = 0;
    own = vec2(0.0);
    if (stuff == 0) {
      base *= 1.0 + 0.05 * (look.w - 0.5);
      if (edge) {
        pattern = 1;
        own.x = local.z / look.y * max(3.0, 2.0 * floor(look.y / 2.8) + 1.0);
      } else base *= 0.985;
    } else if (stuff == 7 && !edge) {
      pattern = 2;
      own = local.xy / look.y;
    }
    vec3 seen = normalize(mat3(viewMatrix) * normal);
    float lamp = max(0.0, dot(seen, normalize(vec3(-0.45, 0.62, 0.64))));
    float bright = clamp(0.08 * normal.y + 0.98 * lamp, 0.0, 1.0);
    shown = base * mix(vec3(0.60, 0.555, 0.52), vec3(1.0), bright);
    if (lit > 0) shown = mix(shown, marks[lit] * (0.55 + 0.5 * lamp), lit == ${TOUCHED} ? 0.28 : 0.5);
    bool there = stand.w > 0.5 && stand.w < ${FAINT}.0 - 0.5;
    gl_Position = there ? projectionMatrix * (viewMatrix * vec4(position + stand.xyz, 1.0)) : AWAY;
  }
`;

export const quickFragment = `${HEAD}
  in vec3 shown;
  in vec2 own;
  flat in int pattern;
  out vec4 colour;
  void main() {
    vec3 tone = shown;
    if (pattern == 1) tone *= abs(mod(own.x, 2.0) - 1.0) > 0.5 ? vec3(0.93, 0.88, 0.80) : vec3(0.70, 0.57, 0.43);
    else if (pattern == 2) tone = dot(own, own) > 0.67 ? shown * 1.25 : vec3(0.15, 0.22, 0.25);
    colour = vec4(tone, 1.0);
  }
`;

/** What was met where: the number of the piece, plus one, in the red and green. */
export const pickFragment = `${HEAD}
  in vec3 place;
  in vec3 facing;
  in vec4 own;
  flat in vec4 look;
  flat in float which;
  uniform float sawn;
  out vec4 colour;
  void main() {
    if (sawn > 0.5 && place.x < 0.0) discard;
    float number = floor(which + 1.5);
    colour = vec4(mod(number, 256.0) / 255.0, floor(number / 256.0) / 255.0, 0.0, 1.0);
  }
`;

/** A line as a strip of four corners, as wide as is asked for whatever the distance. */
export const linesVertex = `${HEAD}${PIECE}
  in vec2 corner;
  in vec3 from;
  in vec3 to;
  in vec2 kind;
  uniform mat4 viewMatrix;
  uniform mat4 projectionMatrix;
  uniform vec2 room;
  uniform float width;
  uniform float nearer;
  out float side;
  flat out float half_;
  flat out vec4 ink;
  out float x;
  uniform vec4 inks[5];
  void main() {
    vec4 stand = standing(kind.x);
    if (stand.w < 0.5) { gl_Position = AWAY; return; }
    vec4 look = looking(kind.x);
    int lit = int(look.z + 0.5);
    ink = kind.y > 0.5 ? inks[4] : inks[lit];
    if (stand.w > ${FAINT}.0 - 0.5) ink.a *= 0.22;
    vec3 a3 = from + stand.xyz;
    vec3 b3 = to + stand.xyz;
    vec4 a = projectionMatrix * (viewMatrix * vec4(a3, 1.0));
    vec4 b = projectionMatrix * (viewMatrix * vec4(b3, 1.0));
    vec2 along = (b.xy / b.w - a.xy / a.w) * room;
    float size = length(along);
    vec2 across = size > 0.0 ? vec2(-along.y, along.x) / size : vec2(0.0);
    float wide = width * (kind.y > 0.5 ? 0.8 : lit > 1 ? 1.9 : 1.0);
    half_ = 0.5 * wide;
    float reach = half_ + 0.5;
    vec4 at = corner.x < 0.5 ? a : b;
    x = corner.x < 0.5 ? a3.x : b3.x;
    side = corner.y * reach;
    at.xy += across * side * 2.0 / room * at.w;
    // a hair nearer than the faces that meet in it
    at.z -= nearer * at.w;
    gl_Position = at;
  }
`;

/** A line as it is drawn while all moves: one dot wide, whatever the machine makes of that. */
export const thinVertex = `${HEAD}${PIECE}
  in vec3 position;
  in vec2 kind;
  uniform mat4 viewMatrix;
  uniform mat4 projectionMatrix;
  uniform float nearer;
  uniform vec4 inks[5];
  out float side;
  flat out float half_;
  flat out vec4 ink;
  out float x;
  void main() {
    vec4 stand = standing(kind.x);
    if (stand.w < 0.5) { gl_Position = AWAY; return; }
    ink = kind.y > 0.5 ? inks[4] : inks[int(looking(kind.x).z + 0.5)];
    if (stand.w > ${FAINT}.0 - 0.5) ink.a *= 0.22;
    vec3 place = position + stand.xyz;
    x = place.x;
    side = 0.0;
    half_ = 0.5;
    gl_Position = projectionMatrix * (viewMatrix * vec4(place, 1.0));
    gl_Position.z -= nearer * gl_Position.w;
  }
`;

export const linesFragment = `${HEAD}
  in float side;
  flat in float half_;
  flat in vec4 ink;
  in float x;
  uniform float sawn;
  out vec4 colour;
  void main() {
    if (sawn > 0.5 && x < -0.01) discard;
    float inked = clamp(half_ + 0.5 - abs(side), 0.0, 1.0);
    colour = vec4(ink.rgb, ink.a * inked);
  }
`;

/** The light from the pupil to the film: z 0 stands for the pupil, 1 for the film. */
export const coneVertex = `${HEAD}
  in vec3 position;
  uniform mat4 viewMatrix;
  uniform mat4 projectionMatrix;
  uniform vec2 ends;
  out float x;
  void main() {
    vec3 place = vec3(position.xy, mix(ends.x, ends.y, position.z));
    x = position.x;
    gl_Position = projectionMatrix * (viewMatrix * vec4(place, 1.0));
  }
`;

export const coneFragment = `${HEAD}
  uniform vec4 tint;
  uniform float sawn;
  in float x;
  out vec4 colour;
  void main() {
    if (sawn > 0.5 && x < -0.01) discard;
    colour = tint;
  }
`;

/** A plane that stands in the camera's frame as it is. */
export const planeVertex = `${HEAD}
  in vec3 position;
  uniform mat4 viewMatrix;
  uniform mat4 projectionMatrix;
  void main() { gl_Position = projectionMatrix * (viewMatrix * vec4(position, 1.0)); }
`;

export const planeFragment = `${HEAD}
  out vec4 colour;
  void main() { colour = vec4(0.0); }
`;
