/** How a sentence begins. */

/** The same text with a capital first letter; a text that begins otherwise stays as it is. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
