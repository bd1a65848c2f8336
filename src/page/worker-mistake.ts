/** What a worker's error event says. One whose script could not be had says nothing at all, whatever the types promise. */
export const mistakeIn = ({ message }: { readonly message?: string | undefined }): string =>
  message || 'a part of it could not be loaded. Load the page again.';
