/** The QR code of an entry on a tag or label: black on white, with the four white modules around it that ISO/IEC 18004 asks for. */
import type { Content } from 'pdfmake/interfaces';
import { codeOfEntry } from '../core/entry-code.ts';

/** Points for the modules, which are whole points: an id of 6 to 64 letters takes 29 to 41 modules a side, so two points (0.7 mm) each. */
const fit = 84;
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
