import { z } from 'zod';

/** A text that a check gives no reason against. */
export const checked = (reasonAgainst: (text: string) => string | null) =>
  z.string().superRefine((text, context) => {
    const message = reasonAgainst(text);
    if (message) context.addIssue({ code: 'custom', message });
  });

/** One line of at most so many characters, not blank. */
export const line = (longest: number) =>
  checked((text) =>
    text.trim() === '' || text.length > longest || /[\r\n]/.test(text)
      ? `write one line of 1 to ${longest} characters`
      : null,
  );

/** A whole number within a range, both ends included. */
export const wholeNumber = (least: number, most: number) =>
  checked((text) =>
    /^\d{1,9}$/.test(text) && Number(text) >= least && Number(text) <= most
      ? null
      : `write a whole number from ${least} to ${most}`,
  );
