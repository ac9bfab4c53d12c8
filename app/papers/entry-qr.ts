/** The QR code of an entry on a tag or label: black on white, with the four white modules around it that ISO/IEC 18004 asks for. */
import type { Content } from 'pdfmake/interfaces';
import { codeOfEntry } from '../core/entry-code.ts';

/** Points that the modules may take; they come out as two points (0.7 mm) each for any id an entry can have. */
const fit = 99;
const quietModules = 4;

/** `M`: still read with 15 % of it dirty or torn. */
export const entryQr = (id: string): Content => ({
  qr: codeOfEntry(id),
  eccLevel: 'M',
  fit,
  padding: quietModules,
  foreground: 'black',
  background: 'white',
});
