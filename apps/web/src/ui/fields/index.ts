export { CheckboxField, RadioField, type CheckboxFieldProps, type RadioFieldProps } from './choice-fields.tsx';
export { ComboboxField, type ComboboxFieldProps, type Offer, type Option } from './combobox/combobox-field.tsx';
export { DateField, type DateFieldProps } from './date-field.tsx';
export { FieldFrame, useField, type FieldProps } from './field.tsx';
export { NumberField, type NumberFieldProps } from './number-field.tsx';
export { RoughDayField, type RoughDayFieldProps } from './rough-day-field.tsx';
export { SelectField, type Choice, type SelectFieldProps } from './select-field.tsx';
export { TextArea, TextField, type TextAreaProps, type TextFieldProps } from './text-field.tsx';
