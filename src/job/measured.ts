/** A job's measured values are those of the measuring room: one meaning of doubt everywhere. */
export * from '../measure/measured.ts';
