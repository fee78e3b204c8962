/**
 * One specimen's custody dossier, on a page and on paper, and random samples of dossiers for an audit. It gathers what
 * the rooms know and changes nothing; what custody means and what is wrong with a chain is the custody room's. Start
 * reading at {@link org.dentary.story.dossier.Dossier}, then {@link org.dentary.story.dossier.DossierService}.
 */
package org.dentary.story.dossier;
