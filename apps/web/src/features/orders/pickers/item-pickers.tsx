/** The plant and the container that an order asks for, side by side where there is room. `path` stands before the names, as in `lines.0.`. */
import { ContainerPicker, type PickedContainer } from '../../plants/container-picker.tsx';
import { PlantPicker, type PickedPlant } from '../../plants/plant-picker.tsx';
import './pickers.css';

export interface Item {
  plant: PickedPlant | null;
  container: PickedContainer | null;
}

export interface ItemPickersProps {
  path?: string;
  value: Item;
  onChange: (item: Item) => void;
}

export function ItemPickers({ path = '', value, onChange }: ItemPickersProps) {
  return (
    <div className="item-pickers">
      <PlantPicker
        name={`${path}plantId`}
        value={value.plant}
        onChange={(plant) =>
          onChange({ ...value, plant: plant && { id: plant.id, scientificName: plant.scientificName } })
        }
      />
      <ContainerPicker
        name={`${path}containerId`}
        value={value.container}
        onChange={(container) =>
          onChange({ ...value, container: container && { id: container.id, name: container.name } })
        }
      />
    </div>
  );
}
