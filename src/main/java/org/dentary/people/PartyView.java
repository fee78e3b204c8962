package org.dentary.people;

/** An organisation that can hold or carry samples. */
public record PartyView(String code, String name) {}
