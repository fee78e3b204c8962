/**
 * Setting up by files: each list of the plan comes as a CSV file, is looked through, and is posted whole or not at all. Which
 * lists there are stands in {@code list}, opening a season and reviewing its cautions in {@code season}, the invented
 * seasons in {@code demo}; what the lists mean to the work is said in the rooms that own them. Start reading at {@link
 * org.dentary.setup.list.SetUpList}, then {@link org.dentary.setup.SetUpImportService}.
 */
package org.dentary.setup;
