/** A style sheet may be imported for its effect; the bundler gathers it. */
declare module '*.css';
