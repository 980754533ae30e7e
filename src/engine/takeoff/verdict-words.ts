/** What an answer is told. Each says what to do next, and none gives the answer away. */
import { amountIn } from '#engine/measure/conversion.ts';
import type { Dimension } from '#engine/measure/dimension.ts';
import { ofBaseUnits } from '#engine/measure/quantity.ts';
import { one } from '#engine/measure/rational.ts';
import type { Text } from '#engine/text.ts';
import type { RoundRule } from './family.ts';
import { inEach } from './fill-text.ts';
import { isPlain } from './formula-kinds.ts';
import type { Mixed } from './mixed-units.ts';
import type { Meant } from './other-unit.ts';
import { unitOfStyle, usualStyle, writeQuantity } from './style.ts';

export const right: Text = { en: 'Right.', es: 'Correcto.' };

export const followed: Text = {
  en: 'Right, worked on from your own earlier answer. Mend that one first and the rest follows.',
  es: 'Correcto a partir de su propia respuesta anterior. Corrija aquella y lo demás la sigue.',
};

export const decide: Text = {
  en: 'This asks for a decision: write yes or no.',
  es: 'Aquí se pide una decisión: escriba sí o no.',
};

export const wrongDecision: Text = {
  en: 'No. Put the two values side by side, with their units, and compare them again.',
  es: 'No. Ponga los dos valores lado a lado, con sus unidades, y compárelos otra vez.',
};

/** By which side of the answer it lies. */
export const wrong = (sign: number): Text =>
  sign > 0
    ? {
        en: 'Too much, and no slip known here. Mark on the drawing what is given, then do one step at a time and write the unit after each number.',
        es: 'Es demasiado, y no es un error conocido aquí. Marque en el dibujo los datos; después haga un paso a la vez y escriba la unidad en cada número.',
      }
    : {
        en: 'Too little, and no slip known here. Mark on the drawing what is given, then do one step at a time and write the unit after each number.',
        es: 'Es muy poco, y no es un error conocido aquí. Marque en el dibujo los datos; después haga un paso a la vez y escriba la unidad en cada número.',
      };

export function slipped(slips: readonly { readonly tell: Text }[], rounding: boolean): Text {
  const ways = slips.map(({ tell }) => tell);
  const all = rounding ? [...ways, badlyRounded(undefined)] : ways;
  return inEach((language) => {
    const [first = '', ...others] = all.map((each) => each[language]);
    return [first, ...others.map((other) => `${or[language]} ${other}`)].join(' ');
  });
}

const or: Text = { en: 'Or else:', es: 'O bien:' };

const dimensionWords: Partial<Record<Dimension['name'], Text>> = {
  length: { en: 'a length', es: 'un largo' },
  area: { en: 'an area', es: 'un área' },
  volume: { en: 'a volume', es: 'un volumen' },
  time: { en: 'a time', es: 'un tiempo' },
  temperature: { en: 'a temperature', es: 'una temperatura' },
  'temperature-difference': { en: 'a temperature difference', es: 'una diferencia de temperatura' },
  angle: { en: 'an angle', es: 'un ángulo' },
  money: { en: 'an amount of money', es: 'una cantidad de dinero' },
};

const nameOf = (dimension: Dimension): Text =>
  isPlain(dimension)
    ? { en: 'a plain number', es: 'un número sin unidad' }
    : (dimensionWords[dimension.name] ?? {
        en: 'another kind of quantity',
        es: 'otra clase de cantidad',
      });

export const otherKind = (given: Dimension, asked: Dimension): Text => ({
  en: `You wrote ${nameOf(given).en}, and this asks for ${nameOf(asked).en}. Look at the unit.`,
  es: `Escribió ${nameOf(given).es}, y aquí se pide ${nameOf(asked).es}. Revise la unidad.`,
});

export const otherUnit = ({ written, meant }: Meant): Text => ({
  en: `The number is right, but its unit is “${meant.label.en[1]}”, not “${written.label.en[1]}”. Change the unit, or convert the number.`,
  es: `El número está bien, pero su unidad es “${meant.label.es[1]}” y no “${written.label.es[1]}”. Cambie la unidad o convierta el número.`,
});

export const mixedUnits = ({ times, units }: Mixed): Text => ({
  en: `You are off by just ${times}: somewhere ${units.en} were taken for one another. Convert everything to one unit first.`,
  es: `La diferencia es de exactamente ${times} veces: en algún paso se confundieron ${units.es}. Pase todo primero a una sola unidad.`,
});

const wholePiece: Text = {
  en: 'The working is right, the rounding is not. Part of one still takes a whole one: round up.',
  es: 'El cálculo está bien, el redondeo no. Una parte también ocupa una pieza completa: redondee hacia arriba.',
};

export function badlyRounded(round: RoundRule | undefined): Text {
  if (!round) {
    return {
      en: 'The working may be right, the rounding is not. Round only once, at the end, and as asked.',
      es: 'El cálculo puede estar bien, el redondeo no. Redondee una sola vez, al final y como se pide.',
    };
  }
  const { how, to } = round;
  if (how === 'up' && isPlain(to.dimension) && to.value.equals(one)) return wholePiece;
  const step = stepText(round);
  const way = ways[how];
  return {
    en: `The working is right, the rounding is not. Round ${way.en} ${step.en}, once, at the end.`,
    es: `El cálculo está bien, el redondeo no. Redondee ${way.es} ${step.es}, una sola vez, al final.`,
  };
}

const ways: Readonly<Record<RoundRule['how'], Text>> = {
  up: { en: 'up to a multiple of', es: 'hacia arriba, a un múltiplo de' },
  down: { en: 'down to a multiple of', es: 'hacia abajo, a un múltiplo de' },
  nearest: { en: 'to the nearest', es: 'al más cercano múltiplo de' },
};

/** The step in the unit that shows it best. */
function stepText({ to }: RoundRule): Text {
  const feet = to.dimension.name === 'length' ? amountIn(to, unitOfStyle('ft')) : undefined;
  const style = feet?.lt(one) ? tenthOfFoot(feet) : usualStyle(to);
  return inEach((language) =>
    writeQuantity(ofBaseUnits(to.value, to.dimension), style, language, { places: 3 }),
  );
}

/** 1/10 ft reads better than 1 3/16". */
const tenthOfFoot = (feet: ReturnType<typeof amountIn>): string =>
  10n % feet.d === 0n && feet.d !== 1n && feet.d !== 2n ? 'ft' : 'in';
