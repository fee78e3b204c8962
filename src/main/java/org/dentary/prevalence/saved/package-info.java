/**
 * Questions of the prevalence report with a name, to be asked again of another cut or of the lines as they are. It keeps
 * what is asked and never an answer. Start reading at {@link org.dentary.prevalence.saved.SavedQuestionService}.
 */
package org.dentary.prevalence.saved;
