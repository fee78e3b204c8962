/** The jaw key: what is seen on a lower jaw, the walk that ends at an age class, and the contradictions that speak against it. */
package org.dentary.jaw.key;
