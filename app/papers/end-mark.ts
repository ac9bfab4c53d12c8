/** How the end mark of a desk stands on a paper, and the key the desk signed with beside it. */
import { fingerprintText, signatureTexts } from '../words/signatures.ts';

/** An end mark as it can be read aloud: all 64 characters, in sixteen groups of four. */
export const endMarkText = (endMark: string): string => fingerprintText(endMark);

/** The line below the end mark of a desk that has signed; nothing for one that has not. */
export const keyLines = ({
  key,
  signed = 0,
}: {
  readonly key?: string | undefined;
  readonly signed?: number | undefined;
}): readonly string[] => (key === undefined ? [] : [signatureTexts.onPaper(signed, key)]);
