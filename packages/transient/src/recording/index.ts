/** How is a recording read? */
export {};
