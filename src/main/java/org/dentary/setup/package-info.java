/**
 * Setting up a season: each list of the plan comes as a CSV file, is looked through, and is posted whole or not at all;
 * the page where a coordinator does so; and the invented season of the demo, loaded by the same way. What the lists mean
 * to the work is said in the rooms that own them. Start reading at {@link org.dentary.setup.SetUpList}, then {@link
 * org.dentary.setup.SetUpImportService}.
 */
package org.dentary.setup;
