import type { PageLoad } from './$types';

/** The company comes along from the page where the check was begun; later the device knows it. */
export const load: PageLoad = ({ url }) => ({ company: url.searchParams.get('company') });
