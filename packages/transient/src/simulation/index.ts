/** How does a system move over time? */
export {};
