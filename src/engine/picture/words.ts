/** What the parts of a picture are called, in the words of the glossary. */
import type { Layer, Zone } from '#engine/method/drawing.ts';
import type { Text } from '#engine/text.ts';

export const layerNames: Readonly<Record<Layer, Text>> = {
  'clean-face': { en: 'Cleaned, dry face', es: 'Cara limpia y seca' },
  strap: { en: 'Strap', es: 'Fleje' },
  'snap-line': { en: 'Snapped line', es: 'Línea tirada' },
  slope: { en: 'Slope', es: 'Pendiente' },
  'back-dam': { en: 'Back dam', es: 'Tope trasero' },
  'drip-edge': { en: 'Drip edge', es: 'Goterón' },
  primer: { en: 'Primer', es: 'Imprimador' },
  tape: { en: 'Seam tape', es: 'Cinta de doble cara' },
  'bare-tape': { en: 'Release paper pulled', es: 'Papel protector retirado' },
  'corner-piece': { en: 'Corner piece', es: 'Esquina preformada' },
  membrane: { en: 'Membrane', es: 'Membrana' },
  pressed: { en: 'Pressed by hand', es: 'Apretada a mano' },
  rolled: { en: 'Rolled', es: 'Pasada con rodillo' },
  bar: { en: 'Termination bar', es: 'Barra de terminación' },
  fasteners: { en: 'Fasteners', es: 'Fijadores' },
  'lap-sealant': { en: 'Lap sealant', es: 'Sellador de traslapes' },
  mastic: { en: 'Water cut-off mastic', es: 'Mastique de corte de agua' },
  'end-dam': { en: 'End dam', es: 'Tope extremo' },
  'weather-barrier': { en: 'Weather barrier', es: 'Barrera contra el agua' },
  weeps: { en: 'Weeps', es: 'Lloraderos' },
  protection: { en: 'Protection', es: 'Protección' },
};

export const zoneNames: Readonly<Record<Zone, Text>> = {
  wall: { en: 'wall', es: 'muro' },
  'top-edge': { en: 'top edge', es: 'orilla superior' },
  transition: { en: 'transition', es: 'transición' },
  shelf: { en: 'shelf', es: 'repisa' },
  toe: { en: 'toe', es: 'pie' },
  corner: { en: 'corner', es: 'esquina' },
  'second-side': { en: 'second side', es: 'segundo lado' },
  'second-shelf': { en: 'shelf of the second side', es: 'repisa del segundo lado' },
  seam: { en: 'seam', es: 'junta' },
  ends: { en: 'ends', es: 'extremos' },
  jambs: { en: 'jambs', es: 'jambas' },
  'front-edge': { en: 'front edge', es: 'orilla del frente' },
  'sheet-back': { en: 'back of the sheet', es: 'revés de la membrana' },
  everywhere: { en: 'whole work', es: 'todo el trabajo' },
};

export const wetNote: Text = { en: 'still wet', es: 'todavía fresco' };
export const leftOutNote: Text = { en: 'left out', es: 'no se hizo' };

/** What the construction that the work starts from is called. */
export const builtNames = {
  sheathing: { en: 'Sheathing', es: 'Panel exterior' },
  stud: { en: 'Steel stud', es: 'Poste de acero' },
  'wood-stud': { en: 'Wood stud', es: 'Poste de madera' },
  wallboard: { en: 'Wallboard inside', es: 'Panel interior' },
  block: { en: 'Concrete masonry', es: 'Mampostería de concreto' },
  concrete: { en: 'Concrete', es: 'Concreto' },
  foundation: { en: 'Foundation', es: 'Cimiento' },
  earth: { en: 'Earth', es: 'Terreno' },
  veneer: { en: 'Brick veneer, still to come', es: 'Ladrillo, todavía por venir' },
  angle: { en: 'Shelf angle', es: 'Ángulo de apoyo' },
  lintel: { en: 'Lintel', es: 'Dintel' },
  bolt: { en: 'Anchor bolt', es: 'Ancla' },
  'soft-joint': { en: 'Soft joint', es: 'Junta flexible' },
  'brick-below': { en: 'Brick below', es: 'Ladrillo de abajo' },
  sill: { en: 'Rough sill', es: 'Alféizar sin acabar' },
  jamb: { en: 'Jamb', es: 'Jamba' },
  'barrier-below': { en: 'Weather barrier below', es: 'Barrera contra el agua de abajo' },
  window: { en: 'Window, still to come', es: 'Ventana, todavía por venir' },
  debris: { en: 'Fins, screw tips and dust', es: 'Rebabas, puntas y polvo' },
  sheet: { en: 'The sheet, back up', es: 'La membrana, revés arriba' },
  ghost: { en: 'Where the sheet will lie', es: 'Donde irá la membrana' },
} as const satisfies Readonly<Record<string, Text>>;

export type Built = keyof typeof builtNames;

export const viewTitles = {
  section: { en: 'Section', es: 'Corte' },
  run: { en: 'Along the wall', es: 'A lo largo del muro' },
  corner: { en: 'At the corner', es: 'En la esquina' },
  sill: { en: 'At the jamb', es: 'En la jamba' },
  seam: { en: 'Across the seam', es: 'A través de la junta' },
  sheet: { en: 'Back of the sheet', es: 'Revés de la membrana' },
} as const satisfies Readonly<Record<string, Text>>;
