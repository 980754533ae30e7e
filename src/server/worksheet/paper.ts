/** A letter page that fills from the top, in the two fonts that every reader of PDF has. */
import { sayable } from './sayable.ts';

export type Doc = PDFKit.PDFDocument;

export const page = { width: 612, height: 792, margin: 54, foot: 46 } as const;
export const column = page.width - 2 * page.margin;
const bottom = page.height - page.margin - page.foot;

export type Look = {
  readonly bold?: boolean;
  readonly size?: number;
  readonly left?: number;
  readonly width?: number;
  readonly align?: 'left' | 'right' | 'center';
  /** Air below. */
  readonly gap?: number;
};

/** The doc with the place where the next thing goes. It is mutable: writing moves the place down. */
export class Paper {
  readonly doc: Doc;
  y: number = page.margin;

  constructor(doc: Doc) {
    this.doc = doc;
  }

  #set({ bold = false, size = 10 }: Look): void {
    this.doc.font(bold ? 'Helvetica-Bold' : 'Helvetica').fontSize(size);
  }

  #frame({ left = 0, width = column - left, align = 'left' }: Look) {
    return { x: page.margin + left, options: { width, align, lineGap: 1.5 } };
  }

  heightOf(text: string, look: Look = {}): number {
    this.#set(look);
    const { options } = this.#frame(look);
    return this.doc.heightOfString(sayable(text), options) + (look.gap ?? 0);
  }

  write(text: string, look: Look = {}): void {
    this.at(text, this.y, look);
    this.y += this.heightOf(text, look);
  }

  /** Beside what the place is at; the place stays. */
  at(text: string, y: number, look: Look = {}): void {
    this.#set(look);
    const { x, options } = this.#frame(look);
    this.doc.fillColor('black').text(sayable(text), x, y, options);
  }

  rule(weight: number, { left = 0, width = column - left, gap = 0 }: Look = {}): void {
    const x = page.margin + left;
    this.doc
      .lineWidth(weight)
      .moveTo(x, this.y)
      .lineTo(x + width, this.y)
      .stroke('black');
    this.y += gap;
  }

  skip(by: number): void {
    this.y += by;
  }

  get room(): number {
    return bottom - this.y;
  }

  /** A new page where less than that is left on this one. */
  need(height: number): void {
    if (height > this.room && this.y > page.margin) this.turn();
  }

  turn(): void {
    this.doc.addPage();
    this.y = page.margin;
  }
}
