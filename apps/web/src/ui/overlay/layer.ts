/** The layer over the page in which a dialog or sheet lies. What such a box opens beside itself belongs on it too, lest the page scroll it away underneath. */
import { createContext, type RefObject } from 'react';

export const LayerContext = createContext<RefObject<HTMLDivElement | null> | null>(null);
