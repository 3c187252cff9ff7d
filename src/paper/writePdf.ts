/** Pages of drawing as a PDF: tagged for reading aloud, in an embedded typeface, the same bytes for the same pages. */
import PDFDocument from 'pdfkit';
import { PAPER, type Page, type PaperSize } from './layOut.ts';
import { BASELINE, type Op, type Tag, type TextOp } from './ops.ts';
import { FEATURES, fontName, registerTypeface, type Typeface } from './typeface.ts';

export interface Meta {
  readonly title: string;
  readonly subject: string;
  readonly createdAt: Date;
  readonly size: PaperSize;
}

type Element = PDFKit.PDFStructureElement;

/** Known to the writer, though not to its types. */
const HEADS_COLUMN: object = { scope: 'Column' };

/** Finds or makes the element of a tag below what holds it. */
function structureOf(document: PDFKit.PDFDocument): { readonly at: (tag: Tag) => Element; readonly end: () => void } {
  const root = document.struct('Document');
  document.addStructure(root);
  const known = new Map<string, Element>();
  return {
    at: (tag) => {
      let parent = root;
      for (const [i, name] of tag.entries()) {
        const key = tag.slice(0, i + 1).join('/');
        let element = known.get(key);
        if (!element) {
          const kind = name.slice(0, name.indexOf(':'));
          element = kind === 'TH' ? document.struct('TH', HEADS_COLUMN) : document.struct(kind);
          parent.add(element);
          known.set(key, element);
        }
        parent = element;
      }
      return parent;
    },
    end: () => root.end(),
  };
} // prettier-ignore

const shade = (grey: number): PDFKit.Mixins.ColorValue => {
  const part = Math.round(grey * 255);
  return [part, part, part];
};

function drawText(document: PDFKit.PDFDocument, typeface: Typeface, op: TextOp): void {
  let x = op.x_pt;
  for (const { words, part } of typeface.runs(op.words.replaceAll('\u00a0', ' '))) {
    document
      .font(fontName(op.weight, part))
      .fontSize(op.size_pt)
      .fillColor(shade(op.grey))
      .text(words, x, op.y_pt + op.size_pt * BASELINE, {
        lineBreak: false,
        baseline: 'alphabetic',
        features: FEATURES,
      });
    x += typeface.width_pt(words, op.weight, op.size_pt);
  }
}

function drawShape(document: PDFKit.PDFDocument, op: Exclude<Op, TextOp>): void {
  switch (op.op) {
    case 'line':
      document.moveTo(...op.from_pt).lineTo(...op.to_pt).lineWidth(op.width_pt).strokeColor(shade(op.grey)).stroke(); // prettier-ignore
      return;
    case 'ring':
      document.circle(op.centre_pt[0], op.centre_pt[1], op.radius_pt).lineWidth(op.width_pt).strokeColor(shade(0)).stroke(); // prettier-ignore
      return;
    case 'shape': {
      const [first, ...rest] = op.points_pt;
      if (!first) return;
      const outline = () => {
        document.moveTo(...first);
        for (const point of rest) document.lineTo(...point);
        document.closePath();
      };
      if (op.fill !== undefined) {
        outline();
        document.fillColor(shade(op.fill)).fill();
      }
      if (op.edge) {
        outline();
        document.lineWidth(op.edge.width_pt).strokeColor(shade(op.edge.grey)).stroke();
      }
    }
  }
}

const sameTag = (a: Tag | undefined, b: Tag | undefined): boolean => a?.join('/') === b?.join('/');

/** Texts that belong together are marked together; all that is only drawn is an artifact. */
function drawPage(document: PDFKit.PDFDocument, typeface: Typeface, ops: readonly Op[], at: (tag: Tag) => Element): void {
  const tagOf = (op: Op) => (op.op === 'text' ? op.tag : undefined);
  for (let i = 0; i < ops.length; ) {
    const tag = tagOf(ops[i]!);
    let end = i + 1;
    while (end < ops.length && sameTag(tagOf(ops[end]!), tag)) end += 1;
    const group = ops.slice(i, end);
    const draw = () => {
      for (const op of group) if (op.op === 'text') drawText(document, typeface, op);
      else drawShape(document, op);
    };
    if (tag) at(tag).add(draw);
    else {
      document.markContent('Artifact', { type: 'Layout' });
      draw();
      document.endMarkedContent();
    }
    i = end;
  }
} // prettier-ignore

/** The bytes of a PDF of these pages. */
export function writePdf(pages: readonly Page[], typeface: Typeface, { title, subject, createdAt, size }: Meta): Promise<Uint8Array> {
  const { width_pt, height_pt } = PAPER[size];
  const document = new PDFDocument({
    autoFirstPage: false,
    pdfVersion: '1.7',
    tagged: true,
    displayTitle: true,
    lang: 'en-GB',
    margin: 0,
    size: [width_pt, height_pt],
    info: { Title: title, Subject: subject, Creator: 'Longsecond', Producer: 'Longsecond', CreationDate: createdAt, ModDate: createdAt },
  });
  const chunks: Uint8Array[] = [];
  const written = new Promise<Uint8Array>((resolve, reject) => {
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('end', () => resolve(Buffer.concat(chunks)));
    document.on('error', reject);
  });
  registerTypeface(document);
  const structure = structureOf(document);
  for (const { ops } of pages) {
    document.addPage();
    drawPage(document, typeface, ops, structure.at);
  }
  structure.end();
  document.end();
  return written;
} // prettier-ignore
