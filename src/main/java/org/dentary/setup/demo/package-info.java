/**
 * The demo: its set-up and its past seasons, loaded by the ways users have, and its invented deer, drawn from a seeded
 * generator that knows the truth and taken through the public API as people would. Nothing in it is about a real place,
 * person or animal. Start reading at {@link org.dentary.setup.demo.DemoLoader}, then {@link
 * org.dentary.setup.demo.DemoSeasons}.
 */
package org.dentary.setup.demo;
