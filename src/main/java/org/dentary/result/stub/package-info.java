/**
 * The look-up by stub for whoever brought an animal, without an account: released outcomes by a random code and a second
 * fact, counted per address and per code. It tells nobody whether a code exists. Start reading at
 * {@link org.dentary.result.stub.StubService}.
 */
package org.dentary.result.stub;
