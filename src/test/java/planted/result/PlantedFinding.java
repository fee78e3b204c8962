package planted.result;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;

/** An entity that others can see, and that lies to the right of who uses it. */
@Entity
public class PlantedFinding {
    @Id
    long id;

    Class<?> back = planted.animal.PlantedRules.class;
}
