/** Text of a report or a brief, its numbers tied to their units. */
export const tied = (text: string): string => text.replace(/(\d) (?=\S)|(×) (?=\d)/g, '$1$2\u00a0');
