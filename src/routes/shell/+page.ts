import { redirect } from '@sveltejs/kit';
import type { PageLoad } from './$types';

// Made at build and empty: kept by browsers, and filled there with the page that was asked for.
export const prerender = true;
export const ssr = false;

/** Whoever asks for the shell itself is led to the first page. */
export const load: PageLoad = () => redirect(307, '/');
