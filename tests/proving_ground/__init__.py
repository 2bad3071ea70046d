"""The proving ground: draws random brochures of invented vans in many layouts, and knows exactly what they state."""
