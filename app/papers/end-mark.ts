/** An end mark as it can be read aloud: all 64 characters, in sixteen groups of four. */
export const endMarkText = (endMark: string): string => endMark.match(/.{1,4}/gu)?.join(' ') ?? '';
